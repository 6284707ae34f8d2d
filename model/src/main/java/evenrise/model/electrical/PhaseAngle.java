package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;

/** Where the voltages of a system stand: A at 0°, B at −120°, C at −240° on three-phase; A at 0°, B at −180° on split-phase. */
public final class PhaseAngle {
    private PhaseAngle() {}

    /** Angle of the voltage from a phase to neutral, against phase A of its own system. */
    public static double radians(PhaseSystem system, Phase phase) {
        return -2 * Math.PI * phase.ordinal() / system.phases().size();
    }

    /** Angle of the voltage from one phase to another; 0 where they are the same. */
    public static double radiansBetween(PhaseSystem system, Phase from, Phase to) {
        return voltage(system, from).plus(voltage(system, to).times(-1)).angleRadians();
    }

    /** The voltage to neutral of a phase, where that of phase A is 1. */
    static Phasor voltage(PhaseSystem system, Phase phase) {
        return Phasor.polar(1, radians(system, phase));
    }
}
