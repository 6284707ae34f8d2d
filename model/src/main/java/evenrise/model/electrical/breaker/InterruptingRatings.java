package evenrise.model.electrical.breaker;

import evenrise.model.project.Practice;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Interrupting ratings that are commonly made, in ampere: the American ones read in code, the others from memory. */
public final class InterruptingRatings {
    private static final Map<Practice, List<Double>> AMPS = Map.of(
            Practice.NEC,
            List.of(10_000.0, 14_000.0, 22_000.0, 25_000.0, 42_000.0, 65_000.0, 100_000.0, 200_000.0),
            Practice.IEC,
            List.of(6_000.0, 10_000.0, 15_000.0, 25_000.0, 36_000.0, 50_000.0, 70_000.0, 100_000.0));

    private InterruptingRatings() {}

    /** Least first. */
    public static List<Double> all(Practice practice) {
        return AMPS.get(practice);
    }

    /** Empty above the last. */
    public static OptionalDouble atLeast(Practice practice, double amps) {
        return all(practice).stream()
                .mapToDouble(Double::doubleValue)
                .filter(each -> each >= amps)
                .findFirst();
    }
}
