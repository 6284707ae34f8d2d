package evenrise.model.observation;

import evenrise.model.project.Phase;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/**
 * Rms currents over time at one place of the distribution, as a logger gives them.
 *
 * @param seconds of the samples by the logger's clock, rising
 * @param amps of each phase that was recorded, a value a sample
 */
public record Recording(double[] seconds, Map<Phase, double[]> amps) {
    private static final int FEWEST = 16;

    public Recording {
        if (seconds.length < FEWEST) {
            throw new IllegalArgumentException(
                    seconds.length + " samples, expected at least " + FEWEST + " to tell steps from noise");
        }
        for (int i = 1; i < seconds.length; i++) {
            if (!(seconds[i] > seconds[i - 1])) {
                throw new IllegalArgumentException("sample " + (i + 1) + " is not later than the one before");
            }
        }
        if (amps.isEmpty() || amps.values().stream().anyMatch(each -> each.length != seconds.length)) {
            throw new IllegalArgumentException("expected a current of at least one phase for every sample");
        }
        amps = new EnumMap<>(amps);
    }

    /** The usual time between samples: the median. */
    public double intervalSeconds() {
        double[] intervals = new double[seconds.length - 1];
        for (int i = 0; i < intervals.length; i++) {
            intervals[i] = seconds[i + 1] - seconds[i];
        }
        Arrays.sort(intervals);
        return intervals[intervals.length / 2];
    }
}
