package evenrise.solver.engine.state;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Tolerances;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The panels that each load may sit in: those that the project states, less those where no plan could keep every rule.
 * Such is a panel whose inrush limit the load breaks together with what always draws there, however the rest is laid out;
 * and for a group that must sit in one panel, any panel that one of its loads may not take. Where nothing would be left,
 * what is stated stays: then no plan keeps every rule, and the referee says which one is broken.
 */
final class AllowedPanels {
    private final Project project;
    private final Map<String, Integer> panelIndex;
    private final Place[][][] placeAt;
    private final int phaseCount;
    private final BitSet[] allowed;

    private AllowedPanels(Project project, Map<String, Integer> panelIndex, Place[][][] placeAt, int phaseCount) {
        this.project = project;
        this.panelIndex = panelIndex;
        this.placeAt = placeAt;
        this.phaseCount = phaseCount;
        allowed = new BitSet[project.loads().size()];
        Arrays.setAll(allowed, load -> stated(project.loads().get(load)));
    }

    /**
     * By load, as the project orders them; equal sets are one and the same.
     *
     * @param placeAt place of a breaker by panel, slot and poles
     */
    static BitSet[] of(Project project, Map<String, Integer> panelIndex, Place[][][] placeAt, int phaseCount) {
        AllowedPanels panels = new AllowedPanels(project, panelIndex, placeAt, phaseCount);
        panels.leaveOutWhatCannotBear();
        panels.keepGroupsTogether();
        Map<BitSet, BitSet> shared = new HashMap<>(); // of thousands of loads, most may sit in the same panels
        Arrays.setAll(panels.allowed, load -> shared.computeIfAbsent(panels.allowed[load], set -> set));
        return panels.allowed;
    }

    private BitSet stated(Load load) {
        BitSet panels = new BitSet();
        if (load.panels().isEmpty()) {
            panels.set(0, project.panels().size());
        } else {
            load.panels().forEach(id -> panels.set(panelIndex.get(id)));
        }
        load.fixed().panel().ifPresent(id -> {
            BitSet only = new BitSet();
            only.set(panelIndex.get(id));
            panels.and(only);
        });
        return panels;
    }

    private void leaveOutWhatCannotBear() {
        double[][] always = alwaysAmps();
        for (int i = 0; i < allowed.length; i++) {
            Load load = project.loads().get(i);
            if (load.switched()) {
                InrushEnvelope envelope = InrushEnvelope.of(load, 0);
                double ownAmps = envelope.baseAmps() + envelope.excessAmps();
                BitSet bearing = (BitSet) allowed[i].clone();
                allowed[i].stream()
                        .filter(panel -> ownAmps + always[panel][load.poles() - 1] > limitAmps(panel))
                        .forEach(bearing::clear);
                narrow(i, bearing);
            }
        }
    }

    private double limitAmps(int panel) {
        OptionalDouble stated = project.panels().get(panel).inrushLimitAmps();
        return stated.orElse(Double.POSITIVE_INFINITY) + Tolerances.AMPS;
    }

    /**
     * By panel, what unswitched loads that can sit nowhere else draw on its phases, from the least to the most. A load of
     * so many poles meets at least that of so many phases on one of its own.
     */
    private double[][] alwaysAmps() {
        double[][] amps = new double[project.panels().size()][phaseCount];
        for (int i = 0; i < allowed.length; i++) {
            Load load = project.loads().get(i);
            if (!load.switched() && allowed[i].cardinality() == 1) {
                int panel = allowed[i].nextSetBit(0);
                int mask = certainPhases(load, panel);
                for (int phase = 0; phase < phaseCount; phase++) {
                    if ((mask >> phase & 1) != 0) {
                        amps[panel][phase] += InrushEnvelope.of(load, 0).baseAmps();
                    }
                }
            }
        }
        for (double[] phases : amps) {
            Arrays.sort(phases);
        }
        return amps;
    }

    private int certainPhases(Load load, int panel) {
        if (load.poles() == phaseCount) {
            return (1 << phaseCount) - 1;
        }
        int slot = load.fixed().slot().orElse(0);
        Place place = slot < placeAt[panel].length ? placeAt[panel][slot][load.poles()] : null;
        return place == null ? 0 : place.phaseMask();
    }

    private void keepGroupsTogether() {
        Map<String, List<Integer>> members = IntStream.range(0, allowed.length)
                .filter(i -> project.loads().get(i).switched())
                .boxed()
                .filter(i -> project.loads().get(i).shutdownGroup().isPresent())
                .collect(Collectors.groupingBy(
                        i -> project.loads().get(i).shutdownGroup().orElseThrow()));
        for (ShutdownGroup group : project.shutdownGroups()) {
            List<Integer> loads = members.getOrDefault(group.id(), List.of());
            if (group.samePanel() && !loads.isEmpty()) {
                BitSet common = (BitSet) allowed[loads.get(0)].clone();
                loads.forEach(load -> common.and(allowed[load]));
                loads.forEach(load -> narrow(load, common));
            }
        }
    }

    private void narrow(int load, BitSet panels) {
        if (!panels.isEmpty()) {
            allowed[load] = panels;
        }
    }
}
