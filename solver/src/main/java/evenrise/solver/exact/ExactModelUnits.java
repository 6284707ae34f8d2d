package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.Collection;

/** Whole numbers for the exact model: currents in tens of microamperes, times in microseconds, weights in thousandths. */
final class ExactModelUnits {
    static final long PER_AMP = 100_000;
    static final long PER_SECOND = 1_000_000;
    static final long PER_WEIGHT = 1_000;

    /** How far a time may pass another and still count as equal: as the rules say. */
    static final long TOLERANCE_MICROS = 500;

    private ExactModelUnits() {}

    /** A quantity that is a whole number of units, so that nothing is rounded. */
    static long exactly(double quantity, long units) {
        long whole = Math.round(quantity * units);
        if (Math.abs(whole - quantity * units) > 1e-3) {
            throw new Unfit(quantity + " is no whole number of " + units + "ths");
        }
        return whole;
    }

    /** An ampere figure rounded down: what it enters is never judged worse than it is, by at most one unit a term. */
    static long amps(double amps) {
        return (long) Math.floor(amps * PER_AMP + 1e-6);
    }

    /** A weight rounded down: what it enters is never judged worse than it is. */
    static long weight(double weight) {
        return (long) Math.floor(weight * PER_WEIGHT + 1e-6);
    }

    /** The last instant of a time in seconds, rounded up: what is left out is later. */
    static long latestMicros(double seconds) {
        return (long) Math.min(Long.MAX_VALUE, Math.ceil(seconds * PER_SECOND) + TOLERANCE_MICROS);
    }

    static LinearExpr sum(Collection<BoolVar> literals) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        literals.forEach(sum::add);
        return sum.build();
    }
}
