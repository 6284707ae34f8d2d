package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.WriteFailed;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** What holds of everything that a job writes. */
final class Outputs {
    private Outputs() {}

    /** Nobody loses what he gave: an output is none of the inputs. */
    static void refuseInputs(Path output, Iterable<Source> inputs) {
        for (Source input : inputs) {
            if (input.path().filter(path -> isSameFile(output, path)).isPresent()) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "output '" + Harmless.shown(output.toString())
                                + "' would overwrite what it is made from. Name another.");
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

    interface Writing {
        void run() throws WriteFailed;
    }

    /** @throws JobFailed where it could not be written */
    static void write(Writing writing) {
        try {
            writing.run();
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
    }
}
