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
    /** Of the stated voltage, by the contract. */
    private static final double VOLTAGE_WITHIN = 0.05;

    private final Project project;
    private final Map<String, Integer> panelIndex;
    private final Place[][][] placeAt;
    private final int phaseCount;
    private final FeederTree tree;
    private final BitSet[] allowed;

    private AllowedPanels(
            Project project, Map<String, Integer> panelIndex, Place[][][] placeAt, int phaseCount, FeederTree tree) {
        this.project = project;
        this.panelIndex = panelIndex;
        this.placeAt = placeAt;
        this.phaseCount = phaseCount;
        this.tree = tree;
        allowed = new BitSet[project.loads().size()];
        Arrays.setAll(allowed, load -> stated(project.loads().get(load)));
    }

    /**
     * By load, as the project orders them; equal sets are one and the same.
     *
     * @param placeAt place of a breaker by panel, slot and poles
     */
    static BitSet[] of(
            Project project, Map<String, Integer> panelIndex, Place[][][] placeAt, int phaseCount, FeederTree tree) {
        AllowedPanels panels = new AllowedPanels(project, panelIndex, placeAt, phaseCount, tree);
        panels.leaveOutOtherVoltages();
        panels.leaveOutWhereItDoesNotFit();
        panels.keepContactorsTogether();
        panels.leaveOutWhatCannotBear();
        panels.keepGroupsTogether();
        panels.keepContactorsTogether();
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

    private void leaveOutOtherVoltages() {
        for (int i = 0; i < allowed.length; i++) {
            OptionalDouble stated = project.loads().get(i).lineToNeutralVolts();
            if (stated.isPresent()) {
                double volts = stated.getAsDouble();
                BitSet alike = (BitSet) allowed[i].clone();
                allowed[i].stream()
                        .filter(panel -> Math.abs(tree.volts(panel) - volts) > VOLTAGE_WITHIN * volts)
                        .forEach(alike::clear);
                narrow(i, alike);
            }
        }
    }

    /** Panels of too few phases; only where panels differ, since elsewhere no plan could help it. */
    private void leaveOutWhereItDoesNotFit() {
        if (tree.transformers.length + tree.sources.length > 1) {
            for (int i = 0; i < allowed.length; i++) {
                int poles = project.loads().get(i).poles();
                BitSet fitting = (BitSet) allowed[i].clone();
                allowed[i].stream()
                        .filter(panel -> Arrays.stream(placeAt[panel]).allMatch(at -> at == null || at[poles] == null))
                        .forEach(fitting::clear);
                narrow(i, fitting);
            }
        }
    }

    /** What is behind a contactor sits in the panel of the load that it is for. */
    private void keepContactorsTogether() {
        Map<String, List<Integer>> bundles = IntStream.range(0, allowed.length)
                .boxed()
                .collect(Collectors.groupingBy(i -> {
                    Load load = project.loads().get(i);
                    return load.comesWith().orElse(load.id());
                }));
        bundles.values().stream().filter(loads -> loads.size() > 1).forEach(this::shareOne);
    }

    private void shareOne(List<Integer> loads) {
        BitSet common = (BitSet) allowed[loads.get(0)].clone();
        loads.forEach(load -> common.and(allowed[load]));
        loads.forEach(load -> narrow(load, common));
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
                shareOne(loads);
            }
        }
    }

    private void narrow(int load, BitSet panels) {
        if (!panels.isEmpty()) {
            allowed[load] = panels;
        }
    }
}
