package evenrise.model.electrical.breaker;

import evenrise.model.project.ContactorCategory;
import java.util.OptionalDouble;

/**
 * Rms current that a contactor is tested to close onto, over its rated operational current: IEC 60947-4-1 and, of the
 * categories for households, IEC 61095; that of AC-3 read in a datasheet, the others from memory. It is a test with a sine:
 * an AC-1 rating says nothing of the inrush of rectifiers. Of transformers and capacitors only makers state one.
 */
public final class MakingCapacity {
    private MakingCapacity() {}

    public static OptionalDouble ratio(ContactorCategory category) {
        return switch (category) {
            case AC_1, AC_5B, AC_7A -> OptionalDouble.of(1.5);
            case AC_3 -> OptionalDouble.of(10);
            case AC_4 -> OptionalDouble.of(12);
            case AC_5A -> OptionalDouble.of(3);
            case AC_7B -> OptionalDouble.of(8);
            case AC_6A, AC_6B -> OptionalDouble.empty();
        };
    }
}
