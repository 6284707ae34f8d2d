package evenrise.model.electrical.breaker;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.ContactorCategory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** IEC 60947-4-1 and IEC 61095: AC-3 as a datasheet prints it, the others from memory. */
class MakingCapacityTest {
    @ParameterizedTest(name = "{0}: {1} times")
    @CsvSource({"AC_1, 1.5", "AC_3, 10", "AC_4, 12", "AC_5A, 3", "AC_5B, 1.5", "AC_7A, 1.5", "AC_7B, 8"})
    void isThatOfTheCategory(ContactorCategory category, double ratio) {
        assertThat(MakingCapacity.ratio(category)).hasValue(ratio);
    }

    /** Of transformers and capacitors makers alone state one. */
    @ParameterizedTest
    @CsvSource({"AC_6A", "AC_6B"})
    void isNotKnownOfTransformersAndCapacitors(ContactorCategory category) {
        assertThat(MakingCapacity.ratio(category)).isEmpty();
    }
}
