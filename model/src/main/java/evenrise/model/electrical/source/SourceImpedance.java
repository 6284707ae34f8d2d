package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.PhaseSystem;

/**
 * Impedance of a source between a line and neutral at the supply's terminals, by the system's voltage between lines. On
 * three phases it is that of one phase. On split-phase a fault from a leg to neutral draws about 1.5 times what one between
 * the lines does (1.33 to 1.67, from memory), so a leg's impedance is a third of that between the lines. A zero-sequence
 * impedance as low as the positive one is assumed, as of a transformer with a delta primary.
 */
public final class SourceImpedance {
    /**
     * On split-phase, what the impedance of a leg may be over the one that is given: the current to neutral is 1.67 times
     * that between the lines at most, and 1.33 times at least.
     */
    public static final double LEAST_LEG_RATIO = 1.5 / 1.67;

    public static final double GREATEST_LEG_RATIO = 1.5 / 1.33;

    private SourceImpedance() {}

    /** Of a rating: V²/S times the percentage, split by reactance over resistance. */
    public static Impedance ofPercent(
            PhaseSystem system, double lineToNeutralVolts, double kva, double percent, double xOverR) {
        double voltAmps = 1000 * kva;
        double ohms =
                switch (system) {
                    case THREE_PHASE -> 3 * lineToNeutralVolts * lineToNeutralVolts / voltAmps;
                    case SPLIT_PHASE -> 4 * lineToNeutralVolts * lineToNeutralVolts / voltAmps / 3;
                    case SINGLE_PHASE -> lineToNeutralVolts * lineToNeutralVolts / voltAmps;
                };
        return split(ohms * percent / 100, xOverR);
    }

    /** Of a fault current of three phases, of two lines, or of the one line. */
    public static Impedance ofFault(PhaseSystem system, double lineToNeutralVolts, double faultAmps, double xOverR) {
        double ohms = system == PhaseSystem.SPLIT_PHASE
                ? 2 * lineToNeutralVolts / faultAmps / 3
                : lineToNeutralVolts / faultAmps;
        return split(ohms, xOverR);
    }

    private static Impedance split(double ohms, double xOverR) {
        double resistance = ohms / Math.hypot(1, xOverR);
        return new Impedance(resistance, resistance * xOverR);
    }
}
