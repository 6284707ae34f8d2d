package evenrise.solver.cli;

import evenrise.solver.app.Effort;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import picocli.CommandLine;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How long and how broad to search. */
final class BudgetOptions {
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
            description =
                    "Searches side by side, of which the best plan is kept; with --time, one of several proves instead "
                            + "where a small project may be proven. Default: with --time one for each processor, at most 8; "
                            + "with --moves 1.")
    private Integer threads;

    /** @throws ParameterException where a number is out of range */
    Effort effort(CommandLine command) {
        return effort(command, limit.time, limit.moves, seed, threads);
    }

    /**
     * The one way in which every command asks for time, moves, seed and threads.
     *
     * @param time null where nobody gave any; moves and threads alike
     * @throws ParameterException where a number is out of range
     */
    static Effort effort(CommandLine command, Duration time, Long moves, long seed, Integer threads) {
        if (moves != null && moves < 1) {
            throw new ParameterException(command, "--moves is " + moves + ", expected at least 1.");
        }
        if (threads != null && !Effort.isAllowed(threads)) {
            throw new ParameterException(
                    command, "--threads is " + threads + ", expected 1 to " + Effort.MOST_THREADS + ".");
        }
        return new Effort(
                Optional.ofNullable(time),
                moves == null ? OptionalLong.empty() : OptionalLong.of(moves),
                seed,
                threads == null ? OptionalInt.empty() : OptionalInt.of(threads));
    }
}
