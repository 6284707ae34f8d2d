package evenrise.solver.document;

import evenrise.model.file.ProjectFile;
import evenrise.model.project.Project;
import java.nio.file.Path;

/** Projects of the tests with parts that no dataset has. */
public final class Plants {
    private Plants() {}

    /** Two systems, a transformer behind another, a further source, a contactor, outputs with times of their own. */
    public static Path twoHalls() {
        return Path.of("src/test/resources/plants/two-halls.project.json");
    }

    public static Project read(Path file) {
        return ProjectFile.read(file).value().orElseThrow();
    }
}
