package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The rms current of each line of a node by phasors: what a clamp meter would show. Fundamentals add as phasors, third
 * harmonics as numbers, the two in quadrature. Never more than the sum of the loads' currents.
 */
public final class LineAmps {
    private final PhaseSystem system;
    private final LineCurrents fundamentals;
    private final PhaseCurrents thirds;

    /** No current yet. */
    public LineAmps(PhaseSystem system) {
        this.system = system;
        this.fundamentals = new LineCurrents(system);
        this.thirds = new PhaseCurrents(system);
    }

    /**
     * Adds a load.
     *
     * @param rmsAmps fundamental and third harmonic together
     * @param thirdHarmonic over the fundamental
     */
    public void add(List<Phase> phases, double rmsAmps, Lag lag, double thirdHarmonic) {
        double fundamental = rmsAmps / LinePower.rmsOverFundamental(thirdHarmonic);
        fundamentals.add(phases, fundamental, lag);
        thirds.add(phases, thirdHarmonic * fundamental);
    }

    public double amps(Phase phase) {
        return Math.hypot(fundamentals.line(phase).length(), thirds.amps(phase));
    }

    /** In the system's order. */
    public Map<Phase, Double> byPhase() {
        Map<Phase, Double> amps = new EnumMap<>(Phase.class);
        system.phases().forEach(phase -> amps.put(phase, amps(phase)));
        return Collections.unmodifiableMap(amps);
    }

    /** How far they differ, over the phases that the node has. */
    public Imbalance imbalance(List<Phase> had) {
        return Imbalance.of(had.stream().mapToDouble(this::amps).toArray());
    }

    /** Of the fundamentals, on three phases. */
    public SymmetricalComponents components() {
        return fundamentals.components();
    }
}
