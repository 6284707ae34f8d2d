package evenrise.solver.cli;

import evenrise.model.check.Severity;
import evenrise.model.file.PlanFile;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;

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

    /** @throws Failure that lists every problem */
    Reading<Plan> plan(String name) {
        return sound(
                name, name.equals(PlanTarget.STREAM) ? PlanFile.read(terminal.in(), name) : PlanFile.read(path(name)));
    }

    /** What is well-formed but cannot come out well. */
    static List<String> findings(Reading<?> reading) {
        return messages(reading, Severity.IMPOSSIBLE);
    }

    private static <T> Reading<T> sound(String name, Reading<T> reading) {
        if (reading.value().isEmpty()) {
            throw new Failure(
                    ExitCode.BAD_INPUT,
                    reading.problems().stream()
                            .map(problem -> name + ": " + problem.message())
                            .toList());
        }
        return reading;
    }

    private static List<String> messages(Reading<?> reading, Severity severity) {
        return reading.problems().stream()
                .filter(problem -> problem.severity() == severity)
                .map(Problem::message)
                .toList();
    }

    static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new Failure(ExitCode.USAGE, "'" + name + "' cannot be the name of a file: " + e.getReason() + ".");
        }
    }
}
