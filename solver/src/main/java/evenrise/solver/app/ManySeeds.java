package evenrise.solver.app;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * A search by many seeds, each for itself by one thread, several side by side.
 *
 * @param seeds of chance; empty for the one of the effort
 * @param grid machines that search in the place of this one; changes nothing of what is found
 * @since 0.1.0
 */
public record ManySeeds(Optional<PortfolioRequest.Seeds> seeds, Optional<GridAccess> grid) {
    /** Seeds of which each search has the effort. */
    List<Long> seedsOf(Effort effort) {
        return seeds.map(each -> LongStream.rangeClosed(each.first(), each.last())
                        .boxed()
                        .toList())
                .orElseGet(() -> List.of(effort.seed()));
    }

    /**
     * Moves of each search: where a time decided, another run would find something else.
     *
     * @throws JobFailed where a time is asked for
     */
    static long moves(Effort effort) {
        if (effort.time().isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "searches by many seeds or on other machines count moves, so that they find the same each time."
                            + " Say --moves in the place of --time.");
        }
        return effort.moves().orElse(PortfolioRequest.USUAL_MOVES);
    }

    /** Of each search: its moves, by one thread. */
    Effort ofEach(Effort effort) {
        return Effort.ofMoves(moves(effort)).withSeed(seedsOf(effort).get(0)).withThreads(1);
    }

    /** Searches side by side in this process. */
    static int slots(Effort effort) {
        return effort.threads().orElse(Runtime.getRuntime().availableProcessors());
    }
}
