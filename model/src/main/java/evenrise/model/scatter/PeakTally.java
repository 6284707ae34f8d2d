package evenrise.model.scatter;

import java.util.ArrayList;
import java.util.List;
import org.HdrHistogram.IntCountsHistogram;

/**
 * Counts the peaks of one node in fixed memory, in steps of a 30,000th of its upper bound, and reads percentiles back.
 * Tallies add up to the same whatever their order.
 */
final class PeakTally {
    /** With four digits, counts up to 32,768 stand each for itself. */
    private static final int DIGITS = 4;

    private static final int STEPS_TO_THE_BOUND = 30_000;

    /** Standard deviations of a confidence of 95 %. */
    private static final double CONFIDENCE = 1.959964;

    private final IntCountsHistogram counts = new IntCountsHistogram(STEPS_TO_THE_BOUND + 1, DIGITS);
    private final double stepAmps;
    private double greatestAmps;

    /** @param boundAmps that no peak exceeds; at least 0 */
    PeakTally(double boundAmps) {
        stepAmps = boundAmps > 0 ? boundAmps / STEPS_TO_THE_BOUND : 1;
    }

    void add(double amps) {
        counts.recordValue(Math.min(STEPS_TO_THE_BOUND, Math.round(amps / stepAmps)));
        greatestAmps = Math.max(greatestAmps, amps);
    }

    void add(PeakTally other) {
        counts.add(other.counts);
        greatestAmps = Math.max(greatestAmps, other.greatestAmps);
    }

    double greatestAmps() {
        return greatestAmps;
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
                    percent, amps(percent), amps(Math.max(0, percent - halfWidth)), amps(percent + halfWidth)));
        }
        return read;
    }

    private double amps(double percent) {
        return percent >= 100 ? greatestAmps : Math.min(greatestAmps, counts.getValueAtPercentile(percent) * stepAmps);
    }
}
