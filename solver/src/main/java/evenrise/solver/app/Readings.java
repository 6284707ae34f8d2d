package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.MeasuredCsv;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads what was measured. */
final class Readings {
    private Readings() {}

    /** @throws JobFailed that lists every problem */
    static Measured of(Path file, Project subject, Plan built) {
        Measured readings = MeasuredCsv.read(text(file), subject, built);
        if (!readings.problems().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    readings.problems().stream()
                            .map(problem -> file + ": " + Harmless.shown(problem))
                            .toList());
        }
        return readings;
    }

    private static String text(Path file) {
        try {
            byte[] bytes = Files.readAllBytes(file);
            if (bytes.length > 1 && bytes[0] == 'P' && bytes[1] == 'K') {
                throw new JobFailed(
                        JobFailed.Reason.INPUT,
                        Harmless.shown(file.toString()) + ": this is a workbook. Save its table as CSV.");
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
