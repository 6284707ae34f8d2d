package evenrise.model.scatter;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.HdrHistogram.IntCountsHistogram;

/**
 * Counts what was drawn in fixed memory, in steps of a 30,000th of what it never exceeds, and reads percentiles back.
 * Tallies add up to the same whatever their order.
 */
final class Tally {
    /** With four digits, counts up to 32,768 stand each for itself. */
    private static final int DIGITS = 4;

    private static final int STEPS_TO_THE_BOUND = 30_000;

    /** Stands after the last count. */
    private static final int END = -1;

    /** Standard deviations of a confidence of 95 %. */
    private static final double CONFIDENCE = 1.959964;

    private final IntCountsHistogram counts = new IntCountsHistogram(STEPS_TO_THE_BOUND + 1, DIGITS);
    private final double step;
    private double greatest;

    /** @param bound that no peak exceeds; at least 0 */
    Tally(double bound) {
        step = bound > 0 ? bound / STEPS_TO_THE_BOUND : 1;
    }

    void add(double drawn) {
        counts.recordValue(Math.min(STEPS_TO_THE_BOUND, Math.round(drawn / step)));
        greatest = Math.max(greatest, drawn);
    }

    void add(Tally other) {
        counts.add(other.counts);
        greatest = Math.max(greatest, other.greatest);
    }

    /** What has been counted, for {@link #add(DataInputStream)} of another. */
    void write(DataOutputStream out) throws IOException {
        out.writeDouble(greatest);
        for (int steps = 0; steps <= STEPS_TO_THE_BOUND; steps++) {
            long count = counts.getCountAtValue(steps);
            if (count > 0) {
                out.writeInt(steps);
                out.writeLong(count);
            }
        }
        out.writeInt(END);
    }

    /** Adds what another tally of the same bound has counted. */
    void add(DataInputStream in) throws IOException {
        greatest = Math.max(greatest, in.readDouble());
        for (int steps = in.readInt(); steps != END; steps = in.readInt()) {
            counts.recordValueWithCount(steps, in.readLong());
        }
    }

    double greatest() {
        return greatest;
    }

    /**
     * Percentiles with the interval that holds the true one with a confidence of 95 %: the ranks n·p ± 1.96·√(n·p·(1 − p)),
     * as the count of trials below a percentile is binomial (normal approximation).
     */
    List<Percentile> percentiles(double... percents) {
        double trials = counts.getTotalCount();
        List<Percentile> read = new ArrayList<>();
        for (double percent : percents) {
            double part = percent / 100;
            double halfWidth = 100 * CONFIDENCE * Math.sqrt(part * (1 - part) / trials);
            read.add(new Percentile(
                    percent, at(percent), at(Math.max(0, percent - halfWidth)), at(percent + halfWidth)));
        }
        return read;
    }

    private double at(double percent) {
        return percent >= 100 ? greatest : Math.min(greatest, counts.getValueAtPercentile(percent) * step);
    }
}
