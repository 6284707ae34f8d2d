package evenrise.model.electrical.breaker;

import evenrise.model.project.Practice;

/**
 * Largest devices beside a transformer of up to 1000 V by NEC table 450.3(B) (450.5(B) in 2026), read in three copies; and
 * what its secondary conductors must carry by 240.21(C) (from memory).
 */
public final class TransformerProtection {
    /** Of the primary device where one on the secondary protects it, too. Not rounded up. */
    private static final double WITH_SECONDARY = 2.5;

    private static final double USUAL = 1.25;
    private static final double SMALL = 1.67;
    private static final double SMALLEST = 3;
    private static final double USUAL_FROM_AMPS = 9;
    private static final double SMALL_FROM_AMPS = 2;

    private TransformerProtection() {}

    /** Largest primary device where no other protects it. */
    public static double primaryAloneAmps(double ratedAmps) {
        if (ratedAmps >= USUAL_FROM_AMPS) {
            return nextUp(USUAL * ratedAmps);
        }
        return ratedAmps * (ratedAmps >= SMALL_FROM_AMPS ? SMALL : SMALLEST);
    }

    /** Largest primary device beside one on the secondary. */
    public static double primaryAmps(double ratedAmps) {
        return WITH_SECONDARY * ratedAmps;
    }

    /** Largest device on the secondary; of up to six together their sum. */
    public static double secondaryAmps(double ratedAmps) {
        return ratedAmps >= USUAL_FROM_AMPS ? nextUp(USUAL * ratedAmps) : SMALL * ratedAmps;
    }

    /**
     * Least ampacity of secondary conductors up to a length, beside that of the device that they end in, by 240.21(C)(2) and
     * (6): as of taps.
     *
     * @param primaryDeviceAmps seen from the secondary
     */
    public static double conductorAmps(double primaryDeviceAmps, double metres) {
        return TapConductor.leastAmps(primaryDeviceAmps, metres);
    }

    private static double nextUp(double amps) {
        return StandardRatings.atLeast(Practice.NEC, amps).orElse(amps);
    }
}
