package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Voltages of a star whose neutral is broken: what returned by it now flows from phase to phase, and the star point moves
 * to Σ Y·V/Σ Y. Each one-pole load is the impedance that draws its current at its nominal voltage; a load of constant power
 * would make a low voltage lower and a high one higher. Voltages are of the nominal one to neutral.
 */
public final class LostNeutral {
    private final PhaseSystem system;
    private final Phasor[] admittance = {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};

    /** Nothing is connected yet. */
    public LostNeutral(PhaseSystem system) {
        this.system = system;
    }

    /**
     * Connects a load.
     *
     * @param amps that it draws at its nominal voltage
     */
    public void add(Phase phase, double amps, Lag lag) {
        admittance[phase.ordinal()] = admittance[phase.ordinal()].plus(Phasor.polar(amps, -lag.radians()));
    }

    /** Percent of the nominal voltage on a phase; empty where nothing is connected, or on one phase. */
    public OptionalDouble percent(Phase phase) {
        Phasor sum = admittance[0].plus(admittance[1]).plus(admittance[2]);
        if (system.phases().size() < 2 || sum.length() <= 0) {
            return OptionalDouble.empty();
        }
        Phasor driven = Phasor.ZERO;
        for (Phase each : system.phases()) {
            driven = driven.plus(PhaseAngle.voltage(system, each).times(admittance[each.ordinal()]));
        }
        Phasor star = driven.times(sum.inverse());
        return OptionalDouble.of(
                100 * PhaseAngle.voltage(system, phase).minus(star).length());
    }

    /**
     * What a phase with next to nothing on it may come to where all loads have one power factor: the voltage between
     * phases. Where some lag and some lead it may be more.
     */
    public static double mostPercent(PhaseSystem system) {
        List<Phase> phases = system.phases();
        return phases.size() < 2
                ? 0
                : 100
                        * PhaseAngle.voltage(system, phases.get(0))
                                .minus(PhaseAngle.voltage(system, phases.get(1)))
                                .length();
    }
}
