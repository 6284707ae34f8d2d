package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.commissioning.FilledSheets;
import evenrise.solver.commissioning.ReadSheets;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.MeasuredCsv;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Reads what was measured: filled commissioning sheets, or a list. */
final class Readings {
    private Readings() {}

    /**
     * @param projectSha256 of the subject's file
     * @throws JobFailed that lists every problem
     */
    static Measured of(Path file, Project subject, String projectSha256, Plan built, Consumer<String> note) {
        List<ReadTable> tables = tables(file, projectSha256, built, note);
        if (FilledSheets.isOurs(tables)) {
            ReadSheets read = FilledSheets.read(Map.of(file.toString(), tables), subject, built, Optional.empty());
            refuse(read.problems().stream());
            return read.greatest(subject);
        }
        Measured readings = MeasuredCsv.read(text(file), subject, built);
        refuse(readings.problems().stream().map(problem -> file + ": " + problem));
        return readings;
    }

    private static void refuse(Stream<String> problems) {
        List<String> all = problems.map(Harmless::shown).toList();
        if (!all.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.INPUT, all);
        }
    }

    /** None where the reader of lists says better what is wrong. */
    private static List<ReadTable> tables(Path file, String projectSha256, Plan built, Consumer<String> note) {
        try {
            return SheetTables.of(file, projectSha256, built, note);
        } catch (IOException e) {
            return List.of();
        }
    }

    private static String text(Path file) {
        try {
            byte[] bytes = Files.readAllBytes(file);
            if (bytes.length > 1 && bytes[0] == 'P' && bytes[1] == 'K') {
                throw new JobFailed(
                        JobFailed.Reason.INPUT,
                        Harmless.shown(file.toString())
                                + ": this workbook has no filled commissioning sheet. Save its table as CSV.");
            }
            return TextTable.decoded(bytes);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    "'" + Harmless.shown(file.toString())
                            + "' cannot be read: there is no such file, or it may not be read.");
        }
    }
}
