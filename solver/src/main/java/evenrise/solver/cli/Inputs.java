package evenrise.solver.cli;

import evenrise.model.check.Severity;
import evenrise.model.file.PlanFile;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.report.Numbers;
import evenrise.solver.report.Sanitizer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads what a command works on; a file or, for {@code -}, standard input. */
final class Inputs {
    private final Terminal terminal;

    Inputs(Terminal terminal) {
        this.terminal = terminal;
    }

    /** @throws Failure that lists every problem */
    Reading<Project> project(String name) {
        return sound(
                name,
                name.equals(PlanTarget.STREAM) ? ProjectFile.read(terminal.in(), name) : ProjectFile.read(path(name)));
    }

    /**
     * A plan of this project.
     *
     * @throws Failure that lists every problem
     */
    Reading<Plan> plan(String name, Project project) {
        return sound(
                name,
                name.equals(PlanTarget.STREAM)
                        ? PlanFile.read(terminal.in(), name, project)
                        : PlanFile.read(path(name), project));
    }

    /**
     * A plan to start at, maybe of an earlier state of the project: what of it fits no longer is left out, and said.
     *
     * @throws Failure that lists every problem
     */
    Plan earlierPlan(String name, Project project) {
        Plan plan = sound(
                        name,
                        name.equals(PlanTarget.STREAM) ? PlanFile.read(terminal.in(), name) : PlanFile.read(path(name)))
                .value()
                .orElseThrow();
        Set<String> loads = project.loads().stream().map(Load::id).collect(Collectors.toSet());
        Set<String> boards = project.boards().stream().map(Board::id).collect(Collectors.toSet());
        long unknownLoads = plan.assignments().stream()
                .filter(each -> !loads.contains(each.load()))
                .count();
        long unknownBoards = plan.boards().stream()
                .filter(each -> !boards.contains(each.id()))
                .count();
        if (unknownLoads + unknownBoards > 0) {
            ShowsFailures.message(
                    terminal.err(),
                    name + ": " + Numbers.counted(unknownLoads, "load") + " and "
                            + Numbers.counted(unknownBoards, "board")
                            + " of this plan are not in the project; they are left out.");
        }
        return plan;
    }

    /** What is well-formed but cannot come out well. */
    static List<String> findings(Reading<?> reading) {
        return reading.problems().stream()
                .filter(problem -> problem.severity() == Severity.IMPOSSIBLE)
                .map(Problem::message)
                .toList();
    }

    /** The message, with the file in front where it does not name the file itself. */
    private static String named(String name, Problem problem) {
        String message = problem.message();
        return message.contains("'" + name + "'") ? message : name + ": " + message;
    }

    static <T> Reading<T> sound(String name, Reading<T> reading) {
        if (reading.value().isEmpty()) {
            throw new Failure(
                    ExitCode.BAD_INPUT,
                    reading.problems().stream()
                            .map(problem -> named(name, problem))
                            .toList());
        }
        return reading;
    }

    /**
     * Nobody loses what he gave: an output is none of the inputs.
     *
     * @param inputs as the user gave them; null where he gave none
     */
    static void refuseAsOutput(String output, String... inputs) {
        for (String input : inputs) {
            if (input != null && !input.equals(PlanTarget.STREAM) && isSameFile(path(output), path(input))) {
                throw new Failure(
                        ExitCode.USAGE,
                        "output '" + Sanitizer.clean(output) + "' would overwrite what it is made from. Name another.");
            }
        }
    }

    private static boolean isSameFile(Path one, Path other) {
        try {
            return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
        } catch (IOException e) {
            // Whoever reads the input says what is wrong with it.
            return false;
        }
    }

    static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new Failure(ExitCode.USAGE, "'" + name + "' cannot be the name of a file: " + e.getReason() + ".");
        }
    }
}
