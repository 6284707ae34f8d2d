package evenrise.model.electrical.breaker;

import evenrise.model.project.Practice;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Ratings that breakers are made in. NEC 240.6(A), read in two copies (the 10 A of 2023, which only memory has, is left
 * out); IEC 60059's preferred currents as breakers use them, read in one copy.
 */
public final class StandardRatings {
    private static final Map<Practice, double[]> AMPS = Map.of(
            Practice.NEC,
            new double[] {
                15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400,
                450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000
            },
            Practice.IEC,
            new double[] {
                1, 2, 3, 4, 6, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630
            });

    private StandardRatings() {}

    public static boolean isStandard(Practice practice, double amps) {
        return DoubleStream.of(AMPS.get(practice)).anyMatch(each -> each == amps);
    }

    /** The least standard rating of at least {@code amps}; empty above the last. */
    public static OptionalDouble atLeast(Practice practice, double amps) {
        return DoubleStream.of(AMPS.get(practice)).filter(each -> each >= amps).findFirst();
    }
}
