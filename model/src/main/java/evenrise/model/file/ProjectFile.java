package evenrise.model.file;

import evenrise.model.check.Feasibility;
import evenrise.model.check.ProjectChecks;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/** Reads and writes project files. */
public final class ProjectFile {
    private static final FileKind<Project> KIND = new FileKind<>(Project.class, "the project", Project.FORMAT) {
        @Override
        void check(Project project, Problems problems) {
            ProjectChecks.errors(project, problems.unread()).forEach(problems::add);
            Feasibility.impossible(project, problems.errors()).forEach(problems::add);
        }

        @Override
        LoadDefaults.Applied applied(Node root) {
            return LoadDefaults.to(root);
        }

        @Override
        Silence silence(Node root, Project project) {
            return Silence.of(root, project);
        }
    };

    private ProjectFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<Project> read(Path file) {
        return KIND.read(file);
    }

    /** @param name what messages call the stream, and what tells the format where it ends so; {@code -} is standard input */
    public static Reading<Project> read(InputStream in, String name) {
        return KIND.read(in, name);
    }

    /** @see #read(InputStream, String) */
    public static Reading<Project> read(byte[] bytes, String name) {
        return KIND.read(bytes, name);
    }

    /**
     * Writes the file as a whole or not at all, with the cautions of this version.
     *
     * @throws WriteFailed with a message that names the file and the cause
     */
    public static void write(Project project, Path file, Format format) throws WriteFailed {
        write(project, SideNotes.NONE, file, format);
    }

    /** The same with notes of its own, each where its place still is. */
    public static void write(Project project, SideNotes notes, Path file, Format format) throws WriteFailed {
        WholeFile.write(file, text(project, notes, format));
    }

    /** Leaves the stream open. */
    public static void write(Project project, OutputStream out, Format format) throws WriteFailed {
        write(project, SideNotes.NONE, out, format);
    }

    /** @see #write(Project, SideNotes, Path, Format) */
    public static void write(Project project, SideNotes notes, OutputStream out, Format format) throws WriteFailed {
        WholeFile.write(out, text(project, notes, format));
    }

    /** What loads left unsaid stays so where the text then still says the same of them. */
    private static String text(Project project, SideNotes notes, Format format) {
        Project whole = project.withCautions(Cautions.ALL);
        String text = FileText.of(whole, notes, format);
        if (notes.silence().isNone()) {
            return text;
        }
        Set<Load> said =
                KIND.bound(text, format).map(read -> Set.copyOf(read.loads())).orElse(Set.of());
        List<Load> otherwise =
                whole.loads().stream().filter(load -> !said.contains(load)).toList();
        return otherwise.isEmpty()
                ? text
                : FileText.of(whole, notes.with(notes.silence().without(otherwise)), format);
    }
}
