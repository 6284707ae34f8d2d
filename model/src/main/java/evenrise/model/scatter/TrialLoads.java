package evenrise.model.scatter;

import evenrise.model.electrical.Crest;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.VoltageBand;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import evenrise.model.rules.SceneCurrents;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plan in arrays: what one trial needs of each sequenced load, command by command, in the order of nominal switch-on. A
 * place is a phase of a node.
 */
final class TrialLoads {
    static final int PHASES = Phase.values().length;

    /** The supply, the panels and the nodes, as the layout has them. */
    final List<String> nodes;

    /** Whether systems have clocks of their own; else one command switches all. */
    final boolean hasClocks;

    /** Where each command's loads begin; one more entry than commands. */
    final int[] begins;

    /**
     * Crest at nominal voltage, by place, of what no command switches, or what a plan gives no output: idle where one
     * command switches all the rest, else in use.
     */
    final double[] standingAmps;

    /** Crest at nominal voltage, by command and place, of what it switches once that is in use; only with clocks. */
    final double[][] usedAmps;

    final double[] onSeconds;

    /** The first of those that close with it, behind one contactor; itself where it closes alone. */
    final int[] closesWith;

    /** Crest of the idle current at nominal voltage. */
    final double[] baseAmps;

    /** What of that base the peak at switch-on has in it. */
    final double[] withinPeakAmps;

    final double[] excessAmps;
    final double[] idleAmps;
    final double[] halfSeconds;
    final boolean[] hasAngle;

    /** Whether an angle is drawn for its closing: for it or for one that closes with it. */
    final boolean[] drawsAngle;

    final int[] panel;
    /** Rms over a half-cycle of an excess of 1 A. */
    final double[] halfCycleRatio;

    /** Conductors of its feeder that its current passes, neutral with it. */
    final double[] ways;

    /** A bit for each phase that the load's poles touch. */
    final int[] phases;

    /** Places where it draws, by load. */
    final int[][] places;

    /** How much of one of its poles each of these has. */
    final double[][] parts;

    final double toleranceSeconds;

    private final Layout layout;

    TrialLoads(Layout layout, double angleUpToHalfMillis) {
        this.layout = layout;
        List<Point> points = layout.distribution().points();
        nodes = points.stream().map(Point::id).toList();
        hasClocks = layout.project().hasClocks();
        toleranceSeconds = layout.project().timingToleranceSeconds();
        List<Optional<String>> commands = commands();
        standingAmps = new double[nodes.size() * PHASES];
        usedAmps = new double[hasClocks ? commands.size() : 0][nodes.size() * PHASES];
        List<Placement> sequenced = new ArrayList<>();
        begins = new int[commands.size() + 1];
        for (int command = 0; command < commands.size(); command++) {
            Optional<String> system = commands.get(command);
            layout.placements().stream()
                    .filter(each -> each.fits() && each.load().switched() && each.isSequenced())
                    .filter(each -> !hasClocks || each.load().system().equals(system))
                    .sorted(Comparator.comparingDouble(each -> each.onSeconds().orElseThrow()))
                    .forEach(sequenced::add);
            begins[command + 1] = sequenced.size();
        }
        int count = sequenced.size();
        onSeconds = new double[count];
        closesWith = new int[count];
        baseAmps = new double[count];
        withinPeakAmps = new double[count];
        idleAmps = new double[count];
        excessAmps = new double[count];
        halfSeconds = new double[count];
        hasAngle = new boolean[count];
        drawsAngle = new boolean[count];
        halfCycleRatio = new double[count];
        ways = new double[count];
        panel = new int[count];
        phases = new int[count];
        places = new int[count][];
        parts = new double[count][];
        Map<String, Integer> index = new HashMap<>();
        Map<String, Integer> contactors = new HashMap<>();
        for (int i = 0; i < count; i++) {
            Placement each = sequenced.get(i);
            Load load = each.load();
            index.put(load.id(), i);
            onSeconds[i] = each.onSeconds().orElseThrow();
            InrushEnvelope nominal = InrushEnvelope.within(load, 0, VoltageBand.NOMINAL);
            baseAmps[i] = nominal.baseAmps();
            excessAmps[i] = nominal.excessAmps();
            withinPeakAmps[i] = Math.min(baseAmps[i], Crest.SINE * load.idleAmps());
            idleAmps[i] = load.idleAmps();
            halfSeconds[i] = load.inrushHalfMillis() / 1000;
            hasAngle[i] = load.inrushHalfMillis() <= angleUpToHalfMillis;
            closesWith[i] = contactors.merge(load.comesWith().orElse(load.id()), i, Math::min);
            drawsAngle[closesWith[i]] |= hasAngle[i];
            halfCycleRatio[i] = TripEquivalent.pulseAmps(
                    1, halfSeconds[i], layout.project().supply().frequencyHertz());
            ways[i] = load.poles() == 1 ? 1 + 1 / each.panel().orElseThrow().neutralFactor() : 1;
            panel[i] = layout.distribution().of(each.panel().orElseThrow()).index();
            for (Phase phase : each.phases()) {
                phases[i] |= 1 << phase.ordinal();
            }
        }
        spread(index, commands);
    }

    int count() {
        return onSeconds.length;
    }

    private List<Optional<String>> commands() {
        return hasClocks
                ? layout.project().systems().stream()
                        .map(SwitchedSystem::id)
                        .map(Optional::of)
                        .toList()
                : List.of(Optional.empty());
    }

    /** Gives every load its places, and sums what is there beside what comes on. */
    private void spread(Map<String, Integer> index, List<Optional<String>> commands) {
        SceneCurrents scenes = SceneCurrents.of(layout.index());
        List<List<Integer>> at = new ArrayList<>();
        List<List<Double>> part = new ArrayList<>();
        index.forEach((id, i) -> {
            at.add(new ArrayList<>());
            part.add(new ArrayList<>());
        });
        for (int node = 0; node < nodes.size(); node++) {
            for (NodeLoads.Seen seen : layout.nodeLoads().seen(node)) {
                Load load = seen.placement().load();
                Integer i = index.get(load.id());
                double used = InrushEnvelope.crestRatio(load) * Math.max(load.idleAmps(), scenes.mostAmps(load));
                double standing = hasClocks ? used : InrushEnvelope.crestRatio(load) * load.idleAmps();
                double[] sums = i == null ? standingAmps : hasClocks ? usedAmps[commands.indexOf(load.system())] : null;
                for (int phase = 0; phase < PHASES; phase++) {
                    double share = seen.parts()[phase];
                    if (share > 0 && i != null) {
                        at.get(i).add(node * PHASES + phase);
                        part.get(i).add(share);
                    }
                    if (share > 0 && sums != null) {
                        sums[node * PHASES + phase] += share * (i == null ? standing : used);
                    }
                }
            }
        }
        for (int i = 0; i < places.length; i++) {
            places[i] = at.get(i).stream().mapToInt(Integer::intValue).toArray();
            parts[i] = part.get(i).stream().mapToDouble(Double::doubleValue).toArray();
        }
    }
}
