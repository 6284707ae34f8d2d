package evenrise.model.electrical.motor;

import evenrise.model.electrical.breaker.BranchRating;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.project.Practice;

/**
 * Circuit of one motor by NEC article 430: its conductor carries 125 % of the full-load current (430.22), its breaker is
 * against short circuits and ground faults alone (table 430.52), the overload device protects the rest (430.32).
 * Percentages read in secondary copies; those of 430.32 from memory.
 */
public final class MotorBranch {
    /** NEC 430.22. */
    public static final double CONDUCTOR_RATIO = 1.25;

    /** NEC 430.110(A), of a disconnecting means (from memory). */
    public static final double DISCONNECT_RATIO = 1.15;

    private static final double WOUND_ROTOR_RATIO = 1.5;

    /** Full-load current up to which 400 %, above which 300 % are the utmost. */
    private static final double UTMOST_CHANGES_AMPS = 100;

    private MotorBranch() {}

    /** Least ampacity of the conductors of a motor in continuous duty. */
    public static double conductorAmps(double fullLoadAmps) {
        return CONDUCTOR_RATIO * fullLoadAmps;
    }

    /** Largest inverse-time breaker of table 430.52: the percentage, or the next standard rating above it. */
    public static double breakerAmps(double fullLoadAmps, boolean isWoundRotor) {
        double amps = (isWoundRotor ? WOUND_ROTOR_RATIO : BranchRating.MOTOR_RATIO) * fullLoadAmps;
        return StandardRatings.atLeast(Practice.NEC, amps - 1e-9).orElse(amps);
    }

    /** Largest where the motor does not start with {@link #breakerAmps}: 400 % up to 100 A, 300 % above. */
    public static double utmostBreakerAmps(double fullLoadAmps, boolean isWoundRotor) {
        double ratio = fullLoadAmps <= UTMOST_CHANGES_AMPS ? 4 : 3;
        return Math.max(breakerAmps(fullLoadAmps, isWoundRotor), ratio * fullLoadAmps);
    }

    /** Largest setting of its overload device, by the nameplate. */
    public static double overloadAmps(double nameplateAmps, double serviceFactor) {
        return (serviceFactor >= 1.15 ? 1.25 : 1.15) * nameplateAmps;
    }

    /** Largest where the motor does not start with {@link #overloadAmps}. */
    public static double utmostOverloadAmps(double nameplateAmps, double serviceFactor) {
        return (serviceFactor >= 1.15 ? 1.4 : 1.3) * nameplateAmps;
    }
}
