package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;

/**
 * The fundamental line currents of a node as phasors, with phase A's voltage to neutral as the reference. A
 * one-pole load's current lags its phase's voltage; a two-pole load's lags the voltage between its lines and leaves by the
 * other line; a three-pole load draws the same on all, each behind its phase. A load's current on a line is counted as its
 * fundamental.
 */
public final class LineCurrents {
    private final PhaseSystem system;
    private final Phasor[] lines = {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};

    /** No current yet. */
    public LineCurrents(PhaseSystem system) {
        this.system = system;
    }

    /**
     * Adds a load.
     *
     * @param phases that its poles touch, different ones
     * @param amps rms fundamental in each of its lines
     * @param lag behind the voltage that the load is fed with
     */
    public void add(List<Phase> phases, double amps, Lag lag) {
        if (phases.size() == 2) {
            Phasor between =
                    unitVoltage(phases.get(0)).plus(unitVoltage(phases.get(1)).times(-1));
            Phasor current = Phasor.polar(amps, between.angleRadians() - lag.radians());
            add(phases.get(0), current);
            add(phases.get(1), current.times(-1));
        } else {
            phases.forEach(phase -> add(phase, Phasor.polar(amps, angle(phase) - lag.radians())));
        }
    }

    public Phasor line(Phase phase) {
        return lines[phase.ordinal()];
    }

    public LineValues lines() {
        return LineValues.of(this::line);
    }

    /** What returns through the neutral. */
    public Phasor neutral() {
        return lines[0].plus(lines[1]).plus(lines[2]);
    }

    /** Unit voltage of a phase to neutral. */
    public Phasor unitVoltage(Phase phase) {
        return Phasor.polar(1, angle(phase));
    }

    /** Of three-phase nodes. */
    public SymmetricalComponents components() {
        return SymmetricalComponents.of(lines[0], lines[1], lines[2]);
    }

    private void add(Phase phase, Phasor current) {
        lines[phase.ordinal()] = lines[phase.ordinal()].plus(current);
    }

    private double angle(Phase phase) {
        return -2 * Math.PI * phase.ordinal() / system.phases().size();
    }
}
