package evenrise.solver.cli;

import evenrise.solver.engine.Budget;
import java.time.Duration;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How long and how broad to search. */
final class BudgetOptions {
    private static final Duration USUAL_TIME = Duration.ofSeconds(30);
    private static final int MOST_THREADS_UNASKED = 8;
    private static final int MOST_THREADS = 64;

    @ArgGroup(exclusive = true)
    private Limit limit = new Limit();

    private static final class Limit {
        @Option(
                names = "--time",
                paramLabel = "TIME",
                converter = Durations.class,
                description = "Search this long: 30s, 2m, 1m30s, 500ms. Default: 30s. What is found depends on the "
                        + "machine.")
        private Duration time;

        @Option(
                names = "--moves",
                paramLabel = "N",
                description = "Try this many moves in each search, in the place of a time. The same seed, moves and "
                        + "threads give the same plan each time.")
        private Long moves;
    }

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of chance. Default: 1.")
    private long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Searches side by side, of which the best plan is kept. Default: with --time one for each "
                    + "processor, at most 8; with --moves 1.")
    private Integer threads;

    Budget budget() {
        if (limit.moves != null) {
            return new Budget.Moves(limit.moves);
        }
        return new Budget.Time(limit.time == null ? USUAL_TIME : limit.time);
    }

    long seed() {
        return seed;
    }

    int threads() {
        if (threads != null) {
            return threads;
        }
        return limit.moves != null
                ? 1
                : Math.min(MOST_THREADS_UNASKED, Runtime.getRuntime().availableProcessors());
    }

    /** @throws ParameterException where a number is out of range */
    void check(picocli.CommandLine command) {
        if (limit.moves != null && limit.moves < 1) {
            throw new ParameterException(command, "--moves is " + limit.moves + ", expected at least 1.");
        }
        checkThreads(command, threads);
    }

    /** @throws ParameterException where {@code threads}, null where nobody gave any, is out of range */
    static void checkThreads(picocli.CommandLine command, Integer threads) {
        if (threads != null && (threads < 1 || threads > MOST_THREADS)) {
            throw new ParameterException(command, "--threads is " + threads + ", expected 1 to " + MOST_THREADS + ".");
        }
    }
}
