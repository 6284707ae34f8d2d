package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.rework.BuiltSchedule;
import evenrise.solver.rework.BuiltScheduleReader;
import evenrise.solver.rework.SpareBreaker;
import evenrise.solver.rework.SpareBreakers;
import evenrise.solver.rework.SpareRows;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads a plan as built from a panel schedule. */
final class BuiltSchedules {
    private BuiltSchedules() {}

    /**
     * Empty where the source is no table by the ending of its name.
     *
     * @throws JobFailed that lists every problem
     */
    static Optional<BuiltSchedule> of(Source source, Project project) {
        Optional<Path> file = source.path().filter(BuiltSchedules::isTable);
        if (file.isEmpty()) {
            return Optional.empty();
        }
        BuiltSchedule read = BuiltScheduleReader.read(tables(file.get(), source.name()), project);
        refuse(source.name(), read.problems());
        return Optional.of(read);
    }

    /**
     * Breakers of a schedule that feed nobody.
     *
     * @param built the plan as built, whose breakers are no spares
     * @throws JobFailed that lists every problem
     */
    static List<SpareBreaker> spares(Path file, Project project, Plan built) {
        SpareRows read = SpareRows.read(tables(file, file.toString()), project);
        List<String> problems = new ArrayList<>(read.problems());
        ProjectIndex index = new ProjectIndex(project);
        for (Assignment seat : built.assignments()) {
            read.spares().stream()
                    .filter(spare -> SpareBreakers.isInTheWay(index, spare, seat))
                    .forEach(spare -> problems.add("slot " + spare.slot() + " of panel " + spare.panel()
                            + " has the breaker of load " + Phrase.quoted(seat.load())
                            + " in the plan as built, and no spare one."));
        }
        refuse(file.toString(), problems);
        return read.spares();
    }

    private static List<ReadTable> tables(Path file, String name) {
        try {
            if (!Files.isRegularFile(file)) {
                throw new IOException("there is no such file");
            }
            return TableFileReader.read(file);
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, Harmless.shown(name) + ": " + e.getMessage() + ".");
        }
    }

    private static void refuse(String name, List<String> problems) {
        if (!problems.isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    problems.stream()
                            .map(problem -> name + ": " + Harmless.shown(problem))
                            .toList());
        }
    }

    private static boolean isTable(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).matches(".*\\.(csv|tsv|txt|xlsx|xlsm)");
    }
}
