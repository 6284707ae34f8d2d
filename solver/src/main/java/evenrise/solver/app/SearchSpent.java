package evenrise.solver.app;

import evenrise.solver.report.SearchFacts;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a search took.
 *
 * @param seconds wall time used
 * @param moves tried by all searches together
 * @param firstFeasibleSeconds when the first plan without a broken hard rule was there; empty where there was none
 * @param wasCancelled whether the search was ended before its budget was used
 * @param endedEarly why it ended before its time, where it was asked to end when that is enough
 * @param outlook what other tries came to, and so what one more may bring, in sentences; empty where nothing is known
 * @since 0.1.0
 */
public record SearchSpent(
        double seconds,
        long moves,
        long seed,
        int threads,
        OptionalDouble firstFeasibleSeconds,
        boolean wasCancelled,
        Optional<String> endedEarly,
        Optional<String> outlook) {

    SearchFacts facts() {
        return new SearchFacts(seconds, moves, seed, threads, firstFeasibleSeconds, wasCancelled, endedEarly, outlook);
    }
}
