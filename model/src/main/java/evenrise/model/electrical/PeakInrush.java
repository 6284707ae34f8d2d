package evenrise.model.electrical;

import evenrise.model.project.Phase;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Greatest sum of envelopes at one node, for each phase. Every envelope only falls after it has started, so the sum has
 * its maximum at some switch-on, and only those instants are looked at. All peaks are taken to coincide and the source
 * to have no impedance: an upper bound at the voltage, and for the currents, that the envelopes are made for.
 *
 * <p>Time: distinct switch-on instants × loads whose excess is still above {@link #NOTHING_AMPS}; space: loads.
 */
public final class PeakInrush {
    /** An excess that has fallen below this is dropped. */
    static final double NOTHING_AMPS = 1e-12;

    private static final int PHASES = Phase.values().length;

    private final double[] standing = new double[PHASES];
    private final double[] peak = new double[PHASES];
    private final double[] at = new double[PHASES];

    private PeakInrush(List<Draw> draws) {
        draws.stream().filter(draw -> draw.onSeconds().isEmpty()).forEach(this::stand);
        System.arraycopy(standing, 0, peak, 0, PHASES);
        Draw[] inOrder = draws.stream()
                .filter(draw -> draw.onSeconds().isPresent())
                .sorted(Comparator.comparingDouble(PeakInrush::start))
                .toArray(Draw[]::new);
        walk(inOrder, Arrays.stream(inOrder).mapToDouble(PeakInrush::start).toArray());
    }

    /** The peaks of a node that feeds {@code draws}. */
    public static PeakInrush of(List<Draw> draws) {
        return new PeakInrush(draws);
    }

    /** Greatest instantaneous current on {@code phase}. */
    public double amps(Phase phase) {
        return peak[phase.ordinal()];
    }

    /** Nominal switch-on time of what makes it, the first of equals; 0 where only what is always on draws. */
    public double atSeconds(Phase phase) {
        return at[phase.ordinal()];
    }

    private void walk(Draw[] draws, double[] starts) {
        int[] decaying = new int[draws.length];
        int count = 0;
        for (int next = 0; next < draws.length; ) {
            Draw first = draws[next];
            double now = starts[next];
            boolean[] touched = new boolean[PHASES];
            for (; next < draws.length && starts[next] <= now + InrushEnvelope.SAME_INSTANT_SECONDS; next++) {
                stand(draws[next]);
                draws[next].phases().forEach(phase -> touched[phase.ordinal()] = true);
                decaying[count++] = next;
            }
            double[] sum = standing.clone();
            int kept = 0;
            for (int i = 0; i < count; i++) {
                Draw draw = draws[decaying[i]];
                double excess = draw.envelope().excessAmps(now - starts[decaying[i]]);
                if (excess >= NOTHING_AMPS) {
                    decaying[kept++] = decaying[i];
                    add(sum, draw.phases(), excess);
                }
            }
            count = kept;
            keepLarger(sum, touched, first.onSeconds().getAsDouble());
        }
    }

    private void keepLarger(double[] sum, boolean[] touched, double onSeconds) {
        for (int phase = 0; phase < PHASES; phase++) {
            if (touched[phase] && sum[phase] > peak[phase]) {
                peak[phase] = sum[phase];
                at[phase] = onSeconds;
            }
        }
    }

    private void stand(Draw draw) {
        add(standing, draw.phases(), draw.envelope().baseAmps());
    }

    private static void add(double[] sums, List<Phase> phases, double amps) {
        for (int i = 0; i < phases.size(); i++) {
            sums[phases.get(i).ordinal()] += amps;
        }
    }

    private static double start(Draw draw) {
        return draw.envelope().startSeconds(draw.onSeconds().getAsDouble());
    }
}
