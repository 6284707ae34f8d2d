package evenrise.model.electrical.breaker;

/**
 * Automatic disconnection of a fault between a line and the protective conductor in a TN system: IEC 60364-4-41, table 41.1
 * and clause 411.3.2, read in secondary copies. A voltage at a border belongs to the lower band: 120 V has 0.8 s, 230 V 0.4.
 */
public final class Disconnection {
    /** Clause 411.3.2.3: distribution circuits, and final circuits that table 41.1 does not cover. */
    public static final double DISTRIBUTION_SECONDS = 5;

    /**
     * Final circuits up to this rating keep the table's time: 63 A with socket-outlets by the amendment of 2017, 32 A
     * before it and for fixed gear. Which of them a circuit is, nobody states, so the greater counts.
     */
    public static final double FINAL_CIRCUIT_AMPS = 63;

    /** A magnetic trip above its band acts within this: IEC 60898-1. */
    public static final double MAGNETIC_SECONDS = 0.1;

    /**
     * A residual-current device, delayed or not, opens within 0.15 s at this many times its rated residual current, an
     * undelayed one within 0.04 s (IEC 61008-1; the first from memory, the second read on one page).
     */
    public static final double RESIDUAL_RATIO = 5;

    private Disconnection() {}

    /** Longest time of a final circuit. */
    public static double finalSeconds(double lineToEarthVolts) {
        if (lineToEarthVolts <= 120) {
            return 0.8;
        } else if (lineToEarthVolts <= 230) {
            return 0.4;
        }
        return lineToEarthVolts <= 400 ? 0.2 : 0.1;
    }

    /** Longest time of a circuit of that rating. */
    public static double seconds(double lineToEarthVolts, double ratedAmps, boolean isFinal) {
        return isFinal && ratedAmps <= FINAL_CIRCUIT_AMPS ? finalSeconds(lineToEarthVolts) : DISTRIBUTION_SECONDS;
    }

    /** Clause 411.4.4: the loop may have no more than c·U0/Ia. */
    public static double mostLoopOhms(double voltageFactor, double lineToEarthVolts, double tripAmps) {
        return voltageFactor * lineToEarthVolts / tripAmps;
    }
}
