package evenrise.solver.report;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a plan was found.
 *
 * @param seconds wall time used
 * @param moves tried by all searches together
 * @param firstFeasibleSeconds when the first plan without a broken rule was there; empty where there was none
 * @param wasInterrupted whether the search was ended from outside before its budget was used
 * @param endedEarly why it ended before its time, where it was asked to end when that is enough
 * @param outlook what other tries came to, and so what one more may bring, in sentences
 */
public record SearchFacts(
        double seconds,
        long moves,
        long seed,
        int threads,
        OptionalDouble firstFeasibleSeconds,
        boolean wasInterrupted,
        Optional<String> endedEarly,
        Optional<String> outlook) {}
