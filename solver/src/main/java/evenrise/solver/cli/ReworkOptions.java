package evenrise.solver.cli;

import evenrise.solver.app.NightOptions;
import evenrise.solver.app.Source;
import evenrise.solver.app.SpareOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    @Option(
            names = "--stay-live",
            paramLabel = "ID",
            split = ",",
            description = "Loads, shutdown groups and panels of which nothing may be off at any time: plans leave alone"
                    + " what would take them off. Several are parted by commas.")
    private List<String> stayLive = new ArrayList<>();

    @Option(
            names = "--most-out",
            paramLabel = "N",
            description = "Shutdown groups of which a load may be off at once, at most.")
    private Integer mostOut;

    @Option(
            names = "--night",
            paramLabel = "MIN",
            split = ",",
            description = "How long a night is, in minutes; several are parted by commas. No stage is longer than the"
                    + " longest, and stages are laid out over them in their order.")
    private List<Double> nights = new ArrayList<>();

    @Option(
            names = "--to",
            paramLabel = "PLAN",
            description = "The plan to work towards: nothing is searched for, and the order of work leads there.")
    private String target;

    @Option(
            names = "--was",
            paramLabel = "PROJECT",
            description = "The project as it was when the plan was built: what gear draws that is gone or replaced.")
    private String was;

    @Option(
            names = "--spares",
            paramLabel = "TABLE",
            description = "A panel schedule (.csv, .xlsx) whose spare rows say which breakers feed nothing; those of a"
                    + " schedule given as PLAN count anyway.")
    private String spares;

    @Option(
            names = "--leave-spares",
            description =
                    "Breakers of gear that is gone stay in their slots as spares, without conductors, where nobody"
                            + " needs the slot.")
    private boolean leavesSpares;

    SpareOptions spares() {
        return new SpareOptions(Optional.ofNullable(spares).map(Source::path), leavesSpares);
    }

    @Option(
            names = "--resume",
            description =
                    "Go on from what an earlier rework into this folder found when it was interrupted or cut off; what is"
                            + " found is kept there every few seconds.")
    private boolean isResuming;

    boolean isResuming() {
        return isResuming;
    }

    Optional<String> was() {
        return Optional.ofNullable(was);
    }

    NightOptions night() {
        return new NightOptions(stayLive, mostOut == null ? OptionalInt.empty() : OptionalInt.of(mostOut), nights);
    }

    Optional<String> target() {
        return Optional.ofNullable(target);
    }

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
        if (mostOut != null && mostOut < 0) {
            throw new ParameterException(command, "--most-out is " + mostOut + ", expected at least 0.");
        }
        nights.stream().filter(minutes -> !(minutes > 0 && minutes <= 1e6)).forEach(minutes -> {
            throw new ParameterException(command, "--night is " + minutes + ", expected more than 0, at most 1e6.");
        });
        if (deadAtOnce < 1) {
            throw new ParameterException(command, "--dead-at-once is " + deadAtOnce + ", expected at least 1.");
        }
    }
}
