package evenrise.model.observation;

import java.util.Arrays;

/** How much a current flickers from sample to sample where nothing happens. */
final class Noise {
    /** Median of the absolute value of a normal variable (from memory). */
    private static final double NORMAL_MEDIAN = 0.6745;

    /** No clamp is better, even if it reads the same each time (common practice, no source). */
    private static final double LEAST_AMPS = 0.0005;

    private Noise() {}

    /**
     * Standard deviation of a sample: of differences between neighbours, by their median, which a few steps do not move.
     * Never less than what it is rounded by.
     */
    static double sigmaAmps(double[] amps) {
        double[] differences = new double[amps.length - 1];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = Math.abs(amps[i + 1] - amps[i]);
        }
        Arrays.sort(differences);
        double median = differences[differences.length / 2];
        double rounded = Arrays.stream(differences)
                .filter(each -> each > LEAST_AMPS)
                .findFirst()
                .orElse(LEAST_AMPS);
        // An even spread over what it is rounded to has a deviation of its width over the root of twelve.
        return Math.max(Math.max(median / NORMAL_MEDIAN / Math.sqrt(2), rounded / Math.sqrt(12)), LEAST_AMPS);
    }
}
