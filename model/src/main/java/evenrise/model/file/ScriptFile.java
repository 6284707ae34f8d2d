package evenrise.model.file;

import evenrise.model.check.ScriptChecks;
import evenrise.model.event.EventScript;
import evenrise.model.project.Project;
import java.io.InputStream;
import java.nio.file.Path;

/** Reads event scripts. */
public final class ScriptFile {
    private static final class Kind extends FileKind<EventScript> {
        private final Project project;

        Kind(Project project) {
            super(EventScript.class, "the script", EventScript.FORMAT);
            this.project = project;
        }

        @Override
        void check(EventScript script, Problems problems) {
            if (problems.unread().isEmpty()) {
                ScriptChecks.errors(script, project).forEach(problems::add);
            }
        }
    }

    private ScriptFile() {}

    /** Reports every problem in one pass, also those of the file itself and of references; throws nothing. */
    public static Reading<EventScript> read(Path file, Project project) {
        return new Kind(project).read(file);
    }

    /** @param name what messages call the stream */
    public static Reading<EventScript> read(InputStream in, String name, Project project) {
        return new Kind(project).read(in, name);
    }
}
