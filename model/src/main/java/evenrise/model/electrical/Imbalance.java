package evenrise.model.electrical;

import java.util.stream.DoubleStream;

/**
 * How far the phases of one node differ: the largest deviation from the mean, over the mean. NEMA MG 1 defines it so for
 * line voltages; here the same form is applied to running currents. It is not (max − min)/mean.
 *
 * @param meanAmps mean of the phases
 * @param deviationAmps largest distance of a phase from the mean
 * @param percent 100·deviation/mean; 0 for an idle node
 */
public record Imbalance(double meanAmps, double deviationAmps, double percent) {

    /** The imbalance of these phase values, in any one unit; 0 for none and for a single phase. */
    public static Imbalance of(double... phases) {
        double mean = DoubleStream.of(phases).sum() / Math.max(1, phases.length);
        double deviation =
                DoubleStream.of(phases).map(each -> Math.abs(each - mean)).max().orElse(0);
        return new Imbalance(mean, deviation, mean == 0 ? 0 : 100 * deviation / mean);
    }
}
