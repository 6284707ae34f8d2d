package evenrise.solver.exhaustive;

import evenrise.model.rules.Tolerances;
import java.util.OptionalLong;

/** Times in whole microseconds. */
final class Micros {
    static final double PER_SECOND = 1e6;
    static final double PER_MILLISECOND = 1e3;

    /** What comparisons of times forgive, and a microsecond for the rounding of either side. */
    static final long FORGIVEN = Math.round(Tolerances.SECONDS * PER_SECOND) + 1;

    private static final double ROUNDING = 1e-3;

    private Micros() {}

    /** Empty where it is no whole number of them. */
    static OptionalLong exactly(double seconds) {
        long whole = Math.round(seconds * PER_SECOND);
        return Math.abs(whole - seconds * PER_SECOND) > ROUNDING ? OptionalLong.empty() : OptionalLong.of(whole);
    }

    /** Rounded down. */
    static long atMost(double seconds) {
        return (long) Math.floor(seconds * PER_SECOND + ROUNDING);
    }
}
