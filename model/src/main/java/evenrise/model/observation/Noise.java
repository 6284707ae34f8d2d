package evenrise.model.observation;

import java.util.Arrays;

/** How much a current flickers from sample to sample where nothing happens. */
final class Noise {
    /** Median of the absolute value of a normal variable (from memory). */
    private static final double NORMAL_MEDIAN = 0.6745;

    /** A clamp that reads the same each time still rounds to so much of its greatest reading (common practice, no source). */
    private static final double LEAST_OF_GREATEST = 0.0005;

    private Noise() {}

    /**
     * Standard deviation of a sample: of differences between neighbours, by their median, which a few steps do not move.
     * Never less than what a clamp rounds to.
     */
    static double sigmaAmps(double[] amps) {
        double[] differences = new double[amps.length - 1];
        double greatest = 0;
        for (int i = 0; i < differences.length; i++) {
            differences[i] = Math.abs(amps[i + 1] - amps[i]);
            greatest = Math.max(greatest, Math.abs(amps[i]));
        }
        Arrays.sort(differences);
        double median = differences[differences.length / 2];
        return Math.max(median / NORMAL_MEDIAN / Math.sqrt(2), LEAST_OF_GREATEST * Math.max(greatest, 1));
    }
}
