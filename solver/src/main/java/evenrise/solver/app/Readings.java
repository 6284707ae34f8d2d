package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.report.Sanitizer;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.MeasuredCsv;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
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
                            .map(problem -> file + ": " + Sanitizer.clean(problem))
                            .toList());
        }
        return readings;
    }

    private static String text(Path file) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT, file + ": this is not UTF-8 text. Save the table as CSV in UTF-8.");
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    "'" + Sanitizer.clean(file.toString())
                            + "' cannot be read: there is no such file, or it may not be read.");
        }
    }
}
