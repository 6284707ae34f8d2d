package evenrise.model.electrical.breaker;

import evenrise.model.project.Practice;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Ratings that breakers are made in. NEC 240.6(A), read in several copies, with the 10 A of 2023 (read on one page with its
 * reason, 240.4(D)(3); two other pages give 10 A to fuses alone). IEC: the preferred values of IEC 60898-1 up to 125 A, of
 * which 8 A is from memory, the smaller ones that are made besides, and the R10 series of IEC 60059 above (from memory above
 * 630 A).
 */
public final class StandardRatings {
    private static final Map<Practice, double[]> AMPS = Map.of(
            Practice.NEC,
            new double[] {
                10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350,
                400, 450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000
            },
            Practice.IEC,
            new double[] {
                1, 2, 3, 4, 6, 8, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630,
                800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300
            });

    /** Standard, but hardly to be had: never proposed. */
    private static final Map<Practice, Double> RARE_AMPS = Map.of(Practice.NEC, 10.0, Practice.IEC, 8.0);

    private StandardRatings() {}

    public static boolean isStandard(Practice practice, double amps) {
        return DoubleStream.of(AMPS.get(practice)).anyMatch(each -> each == amps);
    }

    /** The least standard rating of at least {@code amps} that is commonly made; empty above the last. */
    public static OptionalDouble atLeast(Practice practice, double amps) {
        return DoubleStream.of(AMPS.get(practice))
                .filter(each -> each >= amps && each != RARE_AMPS.get(practice))
                .findFirst();
    }

    /** The greatest standard rating of at most {@code amps} that is commonly made; empty below the first. */
    public static OptionalDouble atMost(Practice practice, double amps) {
        return DoubleStream.of(AMPS.get(practice))
                .filter(each -> each <= amps && each != RARE_AMPS.get(practice))
                .max();
    }
}
