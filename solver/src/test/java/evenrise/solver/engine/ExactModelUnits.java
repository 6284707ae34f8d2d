package evenrise.solver.engine;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.Collection;

/** Whole numbers for the exact model: currents in tenths of a milliampere, times in milliseconds. */
final class ExactModelUnits {
    static final long PER_AMP = 10_000;
    static final long PER_SECOND = 1_000;

    /** Weights of the objective are tenths. */
    static final long PER_WEIGHT = 10;

    private ExactModelUnits() {}

    /** A quantity that is a whole number of units, so that nothing is rounded. */
    static long exactly(double quantity, long units) {
        long whole = Math.round(quantity * units);
        if (Math.abs(whole - quantity * units) > 1e-6) {
            throw new IllegalArgumentException(quantity + " is no whole number of " + units + "ths");
        }
        return whole;
    }

    /** An ampere figure rounded down: what it enters is never judged worse than it is, by at most one unit a term. */
    static long amps(double amps) {
        return (long) Math.floor(amps * PER_AMP + 1e-6);
    }

    static LinearExpr sum(Collection<BoolVar> literals) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        literals.forEach(sum::add);
        return sum.build();
    }
}
