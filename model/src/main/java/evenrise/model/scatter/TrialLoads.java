package evenrise.model.scatter;

import evenrise.model.electrical.Crest;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.VoltageBand;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A plan in arrays: what one trial needs of each sequenced load, in the order of nominal switch-on. */
final class TrialLoads {
    static final int PHASES = Phase.values().length;

    /** The supply, then the panels in the project's order. */
    final List<String> nodes = new ArrayList<>();

    /** Crest of the current of unswitched loads at nominal voltage, by node and phase; it is there from the beginning. */
    final double[] standingAmps;

    final double[] onSeconds;

    /** Crest of the idle current at nominal voltage. */
    final double[] baseAmps;

    /** What of that base the peak at switch-on has in it. */
    final double[] withinPeakAmps;

    final double[] excessAmps;
    final double[] idleAmps;
    final double[] halfSeconds;
    final boolean[] hasAngle;
    final int[] panel;
    /** Rms over a half-cycle of an excess of 1 A. */
    final double[] halfCycleRatio;

    /** Conductors of its feeder that its current passes, neutral with it. */
    final double[] ways;

    /** A bit for each phase that the load's poles touch. */
    final int[] phases;

    final double toleranceSeconds;

    TrialLoads(Layout layout, double angleUpToHalfMillis) {
        Map<String, Integer> index = new HashMap<>();
        nodes.add(NodeFigures.SUPPLY);
        layout.project().panels().forEach(each -> {
            index.put(each.id(), nodes.size());
            nodes.add(each.id());
        });
        toleranceSeconds = layout.project().timingToleranceSeconds();
        standingAmps = new double[nodes.size() * PHASES];
        List<Placement> fed = layout.placements().stream()
                .filter(Placement::fits)
                .filter(each -> each.load().switched() == each.isSequenced())
                .toList();
        for (Placement each : fed) {
            if (!each.isSequenced()) {
                int at = index.get(each.assignment().panel());
                for (Phase phase : Phase.values()) {
                    if (each.phases().contains(phase)) {
                        standingAmps[phase.ordinal()] += crest(each.load());
                        standingAmps[at * PHASES + phase.ordinal()] += crest(each.load());
                    }
                }
            }
        }
        List<Placement> sequenced = fed.stream()
                .filter(Placement::isSequenced)
                .sorted(Comparator.comparingDouble(each -> each.onSeconds().orElseThrow()))
                .toList();
        int count = sequenced.size();
        onSeconds = new double[count];
        baseAmps = new double[count];
        withinPeakAmps = new double[count];
        idleAmps = new double[count];
        excessAmps = new double[count];
        halfSeconds = new double[count];
        hasAngle = new boolean[count];
        halfCycleRatio = new double[count];
        ways = new double[count];
        panel = new int[count];
        phases = new int[count];
        for (int i = 0; i < count; i++) {
            Placement each = sequenced.get(i);
            Load load = each.load();
            onSeconds[i] = each.onSeconds().orElseThrow();
            InrushEnvelope nominal = InrushEnvelope.within(load, 0, VoltageBand.NOMINAL);
            baseAmps[i] = nominal.baseAmps();
            excessAmps[i] = nominal.excessAmps();
            withinPeakAmps[i] = Math.min(baseAmps[i], Crest.SINE * load.idleAmps());
            idleAmps[i] = load.idleAmps();
            halfSeconds[i] = load.inrushHalfMillis() / 1000;
            hasAngle[i] = load.inrushHalfMillis() <= angleUpToHalfMillis;
            halfCycleRatio[i] = TripEquivalent.pulseAmps(
                    1, halfSeconds[i], layout.project().supply().frequencyHertz());
            ways[i] = load.poles() == 1 ? 1 + 1 / each.panel().orElseThrow().neutralFactor() : 1;
            panel[i] = index.get(each.assignment().panel());
            for (Phase phase : each.phases()) {
                phases[i] |= 1 << phase.ordinal();
            }
        }
    }

    int count() {
        return onSeconds.length;
    }

    private static double crest(Load load) {
        return InrushEnvelope.crestRatio(load) * load.idleAmps();
    }
}
