package evenrise.solver.app;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;

/**
 * A project's file as it is, to be sent to whoever plans it.
 *
 * @param name for messages, and for the format by its ending
 */
record ProjectBytes(String name, byte[] bytes) {
    /** @throws JobFailed where it cannot be read */
    static ProjectBytes of(Source source) {
        try {
            return new ProjectBytes(
                    source.path().map(Path::getFileName).map(Path::toString).orElse(source.name()), source.bytes());
        } catch (IOException e) {
            // The reader has words for each way in which a file cannot be read.
            Inputs.sound(source.name(), source.project());
            throw new JobFailed(JobFailed.Reason.INPUT, source.name() + ": " + e.getMessage() + ".");
        }
    }

    Source source() {
        return Source.stream(new ByteArrayInputStream(bytes), name);
    }
}
