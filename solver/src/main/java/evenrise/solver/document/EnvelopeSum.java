package evenrise.solver.document;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Phase;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.Placement;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Adds up the envelopes of loads on one phase. */
final class EnvelopeSum {
    /** An excess that has fallen below this is dropped. */
    private static final double NOTHING_AMPS = 1e-9;

    private EnvelopeSum() {}

    /**
     * Sum of the envelopes at nominal voltage at each of {@code instants}, which rise, of what a node sees of its loads.
     * Time: loads and instants, times the loads whose excess has not died away.
     */
    static double[] amps(List<Seen> fed, Phase phase, double toleranceSeconds, double[] instants) {
        List<Seen> touching =
                fed.stream().filter(each -> each.parts()[phase.ordinal()] > 0).toList();
        Seen[] seen = touching.stream()
                .filter(each -> each.placement().isSequenced())
                .sorted(Comparator.comparingDouble(each -> on(each.placement())))
                .toArray(Seen[]::new);
        Placement[] inOrder = Arrays.stream(seen).map(Seen::placement).toArray(Placement[]::new);
        InrushEnvelope[] envelopes = Arrays.stream(seen)
                .map(each -> envelope(each, phase, toleranceSeconds))
                .toArray(InrushEnvelope[]::new);
        double standing = touching.stream()
                .filter(each -> !each.placement().isSequenced())
                .mapToDouble(each -> envelope(each, phase, 0).baseAmps())
                .sum();
        int[] decaying = new int[inOrder.length];
        int count = 0;
        int next = 0;
        double[] sums = new double[instants.length];
        for (int i = 0; i < instants.length; i++) {
            double now = instants[i] + InrushEnvelope.SAME_INSTANT_SECONDS;
            for (; next < inOrder.length && envelopes[next].startSeconds(on(inOrder[next])) <= now; next++) {
                standing += envelopes[next].baseAmps();
                decaying[count++] = next;
            }
            double excess = 0;
            int kept = 0;
            for (int k = 0; k < count; k++) {
                int load = decaying[k];
                double left = envelopes[load].amps(on(inOrder[load]), now) - envelopes[load].baseAmps();
                if (left >= NOTHING_AMPS) {
                    decaying[kept++] = load;
                    excess += left;
                }
            }
            count = kept;
            sums[i] = standing + excess;
        }
        return sums;
    }

    private static InrushEnvelope envelope(Seen seen, Phase phase, double toleranceSeconds) {
        double part = seen.parts()[phase.ordinal()];
        InrushEnvelope own = InrushEnvelope.of(seen.placement().load(), toleranceSeconds);
        return part == 1 ? own : own.times(part);
    }

    private static double on(Placement each) {
        return each.onSeconds().getAsDouble();
    }
}
