package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Sums rms running currents by phase, by magnitude: what a line conductor must be rated for. */
public final class PhaseCurrents {
    private final List<Phase> phases;
    private final double[] amps = new double[Phase.values().length];

    /** No current yet, on each phase of {@code system}. */
    public PhaseCurrents(PhaseSystem system) {
        this.phases = system.phases();
    }

    /** Adds a load that draws {@code lineAmps} on each of {@code touched}. */
    public void add(List<Phase> touched, double lineAmps) {
        for (Phase phase : touched) {
            amps[phase.ordinal()] += lineAmps;
        }
    }

    /** The sum on one phase. */
    public double amps(Phase phase) {
        return amps[phase.ordinal()];
    }

    /** The sums, in the system's order. */
    public Map<Phase, Double> byPhase() {
        Map<Phase, Double> sums = new EnumMap<>(Phase.class);
        phases.forEach(phase -> sums.put(phase, amps(phase)));
        return Collections.unmodifiableMap(sums);
    }

    /** How far the phases differ. */
    public Imbalance imbalance() {
        return imbalance(phases);
    }

    /** How far these differ, which are those that the node has: a panel may lack some of the system's. */
    public Imbalance imbalance(List<Phase> had) {
        return Imbalance.of(had.stream().mapToDouble(this::amps).toArray());
    }
}
