package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.project.Project;
import evenrise.solver.rework.BuiltSchedule;
import evenrise.solver.rework.BuiltScheduleReader;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
        BuiltSchedule read;
        try {
            if (!Files.isRegularFile(file.get())) {
                throw new IOException("there is no such file");
            }
            read = BuiltScheduleReader.read(TableFileReader.read(file.get()), project);
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, Harmless.shown(source.name()) + ": " + e.getMessage() + ".");
        }
        if (!read.problems().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    read.problems().stream()
                            .map(problem -> source.name() + ": " + Harmless.shown(problem))
                            .toList());
        }
        return Optional.of(read);
    }

    private static boolean isTable(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).matches(".*\\.(csv|tsv|txt|xlsx|xlsm)");
    }
}
