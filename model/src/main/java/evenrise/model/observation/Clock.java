package evenrise.model.observation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A logger's clock against the plan's: {@code logger = offset + rate · plan}.
 *
 * @param offsetSeconds what the logger shows at the command
 * @param rate how fast it runs
 */
public record Clock(double offsetSeconds, double rate) {
    /** Clocks of loggers are no further off than a tenth of a percent (common practice, no source). */
    private static final double MOST_DRIFT = 1e-3;

    /** Of so few pairs a drift would be guessed. */
    private static final int FEWEST_FOR_A_RATE = 8;

    /** What the logger shows. */
    public double logger(double planSeconds) {
        return offsetSeconds + rate * planSeconds;
    }

    /** What the plan's clock showed then. */
    public double plan(double loggerSeconds) {
        return (loggerSeconds - offsetSeconds) / rate;
    }

    /**
     * The offset that most pairs of an expected and a recorded start of similar size agree on.
     *
     * @param alike whether a pair may be one start
     * @param window so far apart agreeing pairs may be
     */
    static Clock ofMostPairs(List<ExpectedStart> expected, List<RecordedStart> recorded, Alike alike, double window) {
        List<double[]> votes = new ArrayList<>();
        for (ExpectedStart one : expected) {
            for (RecordedStart other : recorded) {
                double weight = alike.weight(one, other);
                if (weight > 0) {
                    votes.add(new double[] {other.seconds() - one.seconds(), weight});
                }
            }
        }
        votes.sort((a, b) -> Double.compare(a[0], b[0]));
        double most = -1;
        double offset = 0;
        double sum = 0;
        int from = 0;
        for (int to = 0; to < votes.size(); to++) {
            sum += votes.get(to)[1];
            while (votes.get(to)[0] - votes.get(from)[0] > window) {
                sum -= votes.get(from)[1];
                from++;
            }
            if (sum > most + 1e-12) {
                most = sum;
                double moment = 0;
                double weights = 0;
                for (int i = from; i <= to; i++) {
                    moment += votes.get(i)[0] * votes.get(i)[1];
                    weights += votes.get(i)[1];
                }
                offset = moment / weights;
            }
        }
        return new Clock(offset, 1);
    }

    interface Alike {
        /** 0 where the pair cannot be one. */
        double weight(ExpectedStart expected, RecordedStart recorded);
    }

    /**
     * The same clock, set by pairs that are known: the median of their slopes (Theil, 1950, and Sen, 1968), then of what is
     * left.
     *
     * @param planSeconds of each pair
     * @param loggerSeconds of each pair
     */
    Clock setBy(double[] planSeconds, double[] loggerSeconds) {
        if (planSeconds.length == 0) {
            return this;
        }
        double slope = 1;
        if (planSeconds.length >= FEWEST_FOR_A_RATE) {
            List<Double> slopes = new ArrayList<>();
            for (int i = 0; i < planSeconds.length; i++) {
                for (int j = i + 1; j < planSeconds.length; j++) {
                    double apart = planSeconds[j] - planSeconds[i];
                    if (Math.abs(apart) > 1) {
                        slopes.add((loggerSeconds[j] - loggerSeconds[i]) / apart);
                    }
                }
            }
            slope = slopes.isEmpty()
                    ? 1
                    : median(slopes.stream().mapToDouble(each -> each).toArray());
            slope = Math.max(1 - MOST_DRIFT, Math.min(1 + MOST_DRIFT, slope));
        }
        double[] offsets = new double[planSeconds.length];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = loggerSeconds[i] - slope * planSeconds[i];
        }
        return new Clock(median(offsets), slope);
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        int middle = values.length / 2;
        return values.length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
