package evenrise.solver.report;

import java.util.OptionalDouble;

/**
 * How a plan was found.
 *
 * @param seconds wall time used
 * @param moves tried by all searches together
 * @param firstFeasibleSeconds when the first plan without a broken rule was there; empty where there was none
 * @param wasInterrupted whether the search was ended before its budget was used
 */
public record SearchFacts(
        double seconds,
        long moves,
        long seed,
        int threads,
        OptionalDouble firstFeasibleSeconds,
        boolean wasInterrupted) {}
