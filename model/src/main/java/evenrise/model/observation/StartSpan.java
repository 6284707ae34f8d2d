package evenrise.model.observation;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where in a long recording a start is: the moment from which the sum of all currents rises as planned, at some moments of
 * the start and after it, with the least sum of squares. Sums over the phases stay what they are where clamps are swapped.
 */
public final class StartSpan {
    /** Shorter recordings are taken as they are. */
    private static final int LONG_SAMPLES = 20_000;

    /** Seconds that stay before the command and after the last start. */
    private static final double AROUND = 60;

    private static final int MOMENTS = 16;

    /** A rise is taken from what flows so long before. */
    private static final double BEFORE = 2;

    /** After the last start it is seen whether everything stays on. */
    private static final double AFTER = 5;

    private final double[] seconds;
    private final double[] amps;
    private final double[] after = new double[MOMENTS + 1];
    private final double[] planned = new double[MOMENTS + 1];

    private StartSpan(Layout layout, int point, Optional<String> system, Recording recording, double lasts) {
        seconds = recording.seconds();
        amps = new double[seconds.length];
        recording.amps().values().forEach(each -> {
            for (int i = 0; i < amps.length; i++) {
                amps[i] += each[i];
            }
        });
        PlannedCurrent current = PlannedCurrent.of(layout, point, system, -BEFORE);
        for (int k = 0; k <= MOMENTS; k++) {
            after[k] = k == MOMENTS ? lasts + AFTER : lasts * k / MOMENTS;
            planned[k] = total(current, after[k], recording) - total(current, -BEFORE, recording);
        }
    }

    private static double total(PlannedCurrent current, double moment, Recording recording) {
        int at = 0;
        while (at < current.seconds().size() - 1 && current.seconds().get(at + 1) <= moment) {
            at++;
        }
        double total = 0;
        for (Phase phase : recording.amps().keySet()) {
            List<Double> all = current.amps().get(phase);
            total += all == null ? 0 : all.get(at);
        }
        return total;
    }

    /**
     * The recording, or of a long one the minutes about the start that fits best.
     *
     * @param point index of a place that feeds no transformer
     * @param system whose command it is; empty where the plant has no systems
     */
    public static Recording of(Layout layout, int point, Optional<String> system, Recording recording) {
        List<Double> moments = PlannedCurrent.of(layout, point, system, -BEFORE).seconds();
        double lasts = moments.get(moments.size() - 1);
        double[] seconds = recording.seconds();
        double spans = seconds[seconds.length - 1] - seconds[0];
        if (seconds.length <= LONG_SAMPLES || spans <= 2 * (lasts + 2 * AROUND) || lasts <= 0) {
            return recording;
        }
        double begin = new StartSpan(layout, point, system, recording, lasts).likeliest();
        return between(recording, begin - AROUND, begin + lasts + AROUND);
    }

    private double likeliest() {
        int[] at = new int[after.length];
        int before = 0;
        double least = Double.POSITIVE_INFINITY;
        int best = 0;
        for (int i = 0; i < seconds.length; i++) {
            while (seconds[before] < seconds[i] - BEFORE) {
                before++;
            }
            double squares = 0;
            for (int k = MOMENTS; k >= 0 && squares < least; k--) {
                while (at[k] < seconds.length - 1 && seconds[at[k]] < seconds[i] + after[k]) {
                    at[k]++;
                }
                double off = amps[at[k]] - amps[before] - planned[k];
                squares += off * off;
            }
            if (squares < least) {
                least = squares;
                best = i;
            }
        }
        return seconds[best];
    }

    private static Recording between(Recording recording, double from, double to) {
        double[] seconds = recording.seconds();
        int first = first(seconds, from);
        int last = first(seconds, to);
        Map<Phase, double[]> amps = new EnumMap<>(Phase.class);
        recording.amps().forEach((phase, each) -> amps.put(phase, Arrays.copyOfRange(each, first, last)));
        return new Recording(Arrays.copyOfRange(seconds, first, last), amps);
    }

    private static int first(double[] seconds, double from) {
        int at = Arrays.binarySearch(seconds, from);
        return at < 0 ? -at - 1 : at;
    }
}
