package evenrise.solver.cli;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Which point of the front to take, and how to work towards it. */
final class ReworkOptions {
    @Option(
            names = "--per-move",
            paramLabel = "A",
            description = "What one move costs, in ampere-equivalents of the objective: takes the plan for which "
                    + "objective and moves together cost least.")
    private Double perMove;

    @Option(
            names = "--max-moves",
            paramLabel = "N",
            description =
                    "Take no plan with more moves. Alone, it takes the best of the others; without both, the plan "
                            + "that cures with the fewest moves is taken.")
    private Integer maxMoves;

    @Option(
            names = "--dead-at-once",
            paramLabel = "N",
            defaultValue = "1",
            description = "Loads that may be locked out at once: more of them mean fewer stages and outages. More than "
                    + "that only where it cannot be helped. Default: 1.")
    private int deadAtOnce;

    @Option(
            names = "--keep-running",
            description =
                    "Leave everything where it is for which the whole system would have to go off: processing and "
                            + "auxiliary loads that amplifiers wait for, and what is in a panel or on a board that is "
                            + "isolated with one of them.")
    private boolean keepsRunning;

    boolean keepsRunning() {
        return keepsRunning;
    }

    OptionalDouble perMoveAmps() {
        return perMove == null ? OptionalDouble.empty() : OptionalDouble.of(perMove);
    }

    OptionalInt maxMoves() {
        return maxMoves == null ? OptionalInt.empty() : OptionalInt.of(maxMoves);
    }

    int deadAtOnce() {
        return deadAtOnce;
    }

    /** @throws ParameterException where a number is out of range */
    void check(CommandLine command) {
        if (perMove != null && !(perMove >= 0 && perMove <= 1e9)) {
            throw new ParameterException(command, "--per-move is " + perMove + ", expected 0 to 1e9.");
        }
        if (maxMoves != null && maxMoves < 0) {
            throw new ParameterException(command, "--max-moves is " + maxMoves + ", expected at least 0.");
        }
        if (deadAtOnce < 1) {
            throw new ParameterException(command, "--dead-at-once is " + deadAtOnce + ", expected at least 1.");
        }
    }
}
