package evenrise.model.file;

import evenrise.model.check.PlanChecks;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Optional;

/** Reads and writes plan files. Whether a plan keeps the rules is not asked here. */
public final class PlanFile {
    private static final class Kind extends FileKind<Plan> {
        private final Optional<Project> project;

        Kind(Optional<Project> project) {
            super(Plan.class, "the plan", Plan.FORMAT);
            this.project = project;
        }

        @Override
        void check(Plan plan, Problems problems) {
            PlanChecks.errors(plan).forEach(problems::add);
            if (problems.unread().isEmpty()) {
                project.ifPresent(it -> PlanChecks.errors(plan, it).forEach(problems::add));
            }
        }
    }

    private PlanFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<Plan> read(Path file) {
        return new Kind(Optional.empty()).read(file);
    }

    /** Reports boards that the project does not have, too. */
    public static Reading<Plan> read(Path file, Project project) {
        return new Kind(Optional.of(project)).read(file);
    }

    /** @param name what messages call the stream, and what tells the format where it ends so; {@code -} is standard input */
    public static Reading<Plan> read(InputStream in, String name) {
        return new Kind(Optional.empty()).read(in, name);
    }

    /** @see #read(InputStream, String) */
    public static Reading<Plan> read(InputStream in, String name, Project project) {
        return new Kind(Optional.of(project)).read(in, name);
    }

    /** @see #read(InputStream, String) */
    public static Reading<Plan> read(byte[] bytes, String name) {
        return new Kind(Optional.empty()).read(bytes, name);
    }

    /**
     * Writes the file as a whole or not at all.
     *
     * @throws WriteFailed with a message that names the file and the cause
     */
    public static void write(Plan plan, Path file, Format format) throws WriteFailed {
        WholeFile.write(file, FileText.of(plan, format));
    }

    /** Leaves the stream open. */
    public static void write(Plan plan, OutputStream out, Format format) throws WriteFailed {
        WholeFile.write(out, FileText.of(plan, format));
    }
}
