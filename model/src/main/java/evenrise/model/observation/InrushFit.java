package evenrise.model.observation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One start in a recorded wave: what flowed before, period by period, is taken off, and the crests of what is left, half
 * period by half period, are those of a surge that decays onto what flows in the end.
 *
 * @param seconds when it begins, by the recorder's clock
 * @param peakAmps greatest instantaneous current of it
 * @param endAmps crest of what flows in the end
 * @param halfMillis in which the excess of its crests halves; empty where too few of them exceed the noise
 */
public record InrushFit(double seconds, double peakAmps, double endAmps, OptionalDouble halfMillis) {
    /** Periods before the start that are averaged. */
    private static final int BEFORE = 5;

    /** Starts are known to so many periods from rms values. */
    private static final double UNSURE_PERIODS = 2;

    private static final double DEVIATIONS = 6;

    /** Crests below this part of the first excess say little of how it decays. */
    private static final double LEAST_EXCESS = 0.05;

    /** The last half periods of a window are what flows in the end. */
    private static final int END = 8;

    private static final double MILLIS = 1000;

    /**
     * @param seconds of the samples, rising, from seven periods before {@code about} to as long after it as its surge lasts
     * @param about when it begins, to a period or two
     * @return empty where nothing begins there
     */
    public static Optional<InrushFit> of(double[] seconds, double[] amps, double about, double periodSeconds) {
        double reference = about - UNSURE_PERIODS * periodSeconds;
        int from = first(seconds, reference - periodSeconds);
        if (seconds.length == 0
                || seconds[0] > reference - (BEFORE + 1) * periodSeconds
                || seconds.length - from < 4 * END) {
            return Optional.empty();
        }
        double[] rest = new double[seconds.length - from];
        double[] at = Arrays.copyOfRange(seconds, from, seconds.length);
        for (int i = 0; i < rest.length; i++) {
            rest[i] = amps[from + i] - before(seconds, amps, at[i], reference, periodSeconds);
        }
        int quiet = first(at, reference);
        double noise = deviation(rest, quiet);
        double greatest = 0;
        for (double each : rest) {
            greatest = Math.max(greatest, Math.abs(each));
        }
        double threshold = Math.max(DEVIATIONS * noise, 0.03 * greatest);
        int start = quiet;
        while (start < rest.length && Math.abs(rest[start]) < threshold) {
            start++;
        }
        if (start >= rest.length - 2 * END || greatest < DEVIATIONS * noise) {
            return Optional.empty();
        }
        return Optional.of(fitted(at, rest, start, periodSeconds / 2, noise));
    }

    /** Mean of what the wave was at the same place in the periods before {@code reference}. */
    private static double before(double[] seconds, double[] amps, double at, double reference, double period) {
        double periods = Math.max(1, Math.ceil((at - reference) / period));
        double sum = 0;
        for (int k = 0; k < BEFORE; k++) {
            sum += interpolated(seconds, amps, at - (periods + k) * period);
        }
        return sum / BEFORE;
    }

    private static double interpolated(double[] seconds, double[] amps, double at) {
        int after = Math.min(seconds.length - 1, Math.max(1, first(seconds, at)));
        double part = (at - seconds[after - 1]) / (seconds[after] - seconds[after - 1]);
        return amps[after - 1] + part * (amps[after] - amps[after - 1]);
    }

    /** The first sample that is not before a moment. */
    private static int first(double[] seconds, double at) {
        int found = Arrays.binarySearch(seconds, at);
        return found >= 0 ? found : -found - 1;
    }

    private static double deviation(double[] values, int count) {
        double squares = 0;
        for (int i = 0; i < count; i++) {
            squares += values[i] * values[i];
        }
        return Math.sqrt(squares / Math.max(1, count));
    }

    private record Crest(double seconds, double amps) {}

    private static InrushFit fitted(double[] at, double[] rest, int start, double half, double noise) {
        List<Crest> crests = new ArrayList<>();
        for (double edge = at[start]; edge + half <= at[at.length - 1]; edge += half) {
            crests.add(crest(at, rest, first(at, edge), first(at, edge + half)));
        }
        double peak =
                crests.stream().limit(4 * END).mapToDouble(Crest::amps).max().orElse(0);
        double end = median(crests.subList(Math.max(0, crests.size() - END), crests.size()));
        return new InrushFit(at[start], peak, end, halfMillis(crests, peak, end, noise));
    }

    /** Through the greatest sample and its neighbours, so that a narrow pulse loses nothing between samples. */
    private static Crest crest(double[] at, double[] rest, int from, int to) {
        int most = from;
        for (int i = from; i < to; i++) {
            most = Math.abs(rest[i]) > Math.abs(rest[most]) ? i : most;
        }
        double top = Math.abs(rest[most]);
        if (most > from && most < to - 1) {
            double left = Math.abs(rest[most - 1]);
            double right = Math.abs(rest[most + 1]);
            double bend = left - 2 * top + right;
            top = bend < 0 ? top - (left - right) * (left - right) / (8 * bend) : top;
        }
        return new Crest(at[most], top);
    }

    private static double median(List<Crest> crests) {
        double[] sorted = crests.stream().mapToDouble(Crest::amps).sorted().toArray();
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }

    /** A line through the logarithms of excesses, by least squares, of crests that none later exceeds. */
    private static OptionalDouble halfMillis(List<Crest> crests, double peak, double end, double noise) {
        double least = Math.max(LEAST_EXCESS * (peak - end), 3 * noise);
        List<Crest> falling = new ArrayList<>();
        double later = 0;
        for (int k = crests.size() - 1; k >= 0; k--) {
            Crest each = crests.get(k);
            if (each.amps() >= later) {
                later = each.amps();
                if (each.amps() - end > least) {
                    falling.add(each);
                }
            }
        }
        if (falling.size() < 2) {
            return OptionalDouble.empty();
        }
        double meanTime = falling.stream().mapToDouble(Crest::seconds).average().orElseThrow();
        double meanLog = falling.stream()
                .mapToDouble(each -> log2(each.amps() - end))
                .average()
                .orElseThrow();
        double squares = 0;
        double products = 0;
        for (Crest each : falling) {
            double off = each.seconds() - meanTime;
            squares += off * off;
            products += off * (log2(each.amps() - end) - meanLog);
        }
        double slope = products / squares;
        return slope < 0 ? OptionalDouble.of(-MILLIS / slope) : OptionalDouble.empty();
    }

    private static double log2(double value) {
        return Math.log(value) / Math.log(2);
    }
}
