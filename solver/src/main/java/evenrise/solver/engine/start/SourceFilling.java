package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import java.util.Arrays;
import java.util.TreeMap;

/**
 * The largest inrush that each source must bear at once, of what one contactor closes; only where there are several
 * sources. Each adds its own peak to the objective, so what draws much is better fed by one that bears as much anyway.
 */
final class SourceFilling {
    private static final int MOST_TRIED = 4;
    private static final double COST_PER_AMP = 0.4;

    private final CompiledProject compiled;
    private final boolean counts;
    /** By panel: the source that feeds it, by position. */
    private final int[] sourceOf;

    private final TreeMap<Double, Integer>[] inrushAmps;
    /** By load and panel: what the worst phase of the source bears of all that comes on with it, on the best phases there. */
    private final double[][] peakAmps;

    private double strain;

    @SuppressWarnings({"unchecked", "rawtypes"})
    SourceFilling(CompiledProject compiled) {
        this.compiled = compiled;
        int[] sources = compiled.tree.sources;
        counts = sources.length > 1 && compiled.project.objective().peakInrush() > 0;
        sourceOf = new int[compiled.panelCount];
        inrushAmps = new TreeMap[sources.length];
        for (int i = 0; i < sources.length; i++) {
            inrushAmps[i] = new TreeMap<>();
            for (int panel : compiled.tree.panelsBelow[sources[i]]) {
                sourceOf[panel] = i;
            }
        }
        peakAmps = new double[counts ? compiled.loadCount() : 0][compiled.panelCount];
        for (int load = 0; load < peakAmps.length; load++) {
            for (int panel = compiled.allowedPanels[load].nextSetBit(0);
                    panel >= 0 && compiled.needsOutput[load];
                    panel = compiled.allowedPanels[load].nextSetBit(panel + 1)) {
                peakAmps[load][panel] = least(load, 0, panel, new double[compiled.phaseCount]);
            }
        }
    }

    /** The least over all phases that what is from {@code next} on in a bundle may take, on top of {@code sums}. */
    private double least(int load, int next, int panel, double[] sums) {
        int[] bundle = compiled.bundle[load];
        if (next == bundle.length) {
            return Arrays.stream(sums).max().orElse(0);
        }
        int each = bundle[next];
        int source = compiled.tree.sources[sourceOf[panel]];
        double least = Double.POSITIVE_INFINITY;
        for (int mask : compiled.phaseMasks(panel, compiled.poles[each])) {
            double[] more = sums.clone();
            for (int phase = 0; phase < more.length; phase++) {
                more[phase] += compiled.tree.part(panel, mask, source, phase) * compiled.loads[each].inrushAmps();
            }
            // Of many that come on together, only the first few are tried on all phases.
            least = Math.min(least, least(load, next + 1, panel, more));
            if (next >= MOST_TRIED) {
                break;
            }
        }
        return Double.isInfinite(least) ? 0 : least;
    }

    void add(int load, int panel, int sign) {
        if (counts) {
            TreeMap<Double, Integer> there = inrushAmps[sourceOf[panel]];
            strain -= cost(there);
            there.merge(peakAmps[load][panel], sign, SourceFilling::orNone);
            strain += cost(there);
        }
    }

    private static Integer orNone(int one, int other) {
        return one + other == 0 ? null : one + other;
    }

    private static double cost(TreeMap<Double, Integer> amps) {
        return amps.isEmpty() ? 0 : COST_PER_AMP * amps.lastKey();
    }

    /** How much sources must bear. */
    double strain() {
        return strain;
    }

    /** Whether there is anything to gain by moving loads from one source to another. */
    boolean counts() {
        return counts;
    }

    /** Whether a load in a panel is among the largest that its source must bear. */
    boolean isLargest(int load, int panel) {
        TreeMap<Double, Integer> there = inrushAmps[sourceOf[panel]];
        return !there.isEmpty() && peakAmps[load][panel] >= 0.75 * there.lastKey();
    }
}
