package evenrise.solver.app;

import evenrise.model.event.EventScript;
import evenrise.model.file.Format;
import evenrise.model.file.MovesFile;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.ScriptFile;
import evenrise.model.file.TitleBlockFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.model.plan.PlanMoves;
import evenrise.model.project.Project;
import evenrise.model.project.TitleBlock;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Where an input comes from: a file, a stream, or a record that a program has built. A stream can be read by one job.
 *
 * @since 0.1.0
 */
public final class Source {
    private final String name;
    private final Optional<Path> path;
    private final Optional<InputStream> stream;

    private Source(String name, Optional<Path> path, Optional<InputStream> stream) {
        this.name = name;
        this.path = path;
        this.stream = stream;
    }

    /** JSON, or YAML by the name's ending. */
    public static Source file(Path path) {
        return new Source(path.toString(), Optional.of(path), Optional.empty());
    }

    /** @throws JobFailed where no file can have this name */
    public static Source file(String name) {
        return new Source(name, Optional.of(path(name)), Optional.empty());
    }

    /** @param name what messages call the stream */
    public static Source stream(InputStream in, String name) {
        return new Source(name, Optional.empty(), Optional.of(in));
    }

    /** A project as it is; it is checked like one from a file. */
    public static Source of(Project project) {
        return bytes("the project", out -> ProjectFile.write(project, out, Format.JSON));
    }

    /** A plan as it is; it is checked like one from a file. */
    public static Source of(Plan plan) {
        return bytes("the plan", out -> PlanFile.write(plan, out, Format.JSON));
    }

    /**
     * A file by its name.
     *
     * @throws JobFailed where no file can have this name
     */
    public static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "'" + name + "' cannot be the name of a file: " + e.getReason() + ".");
        }
    }

    /** What messages call it. */
    public String name() {
        return name;
    }

    /** The file; empty where it is none. */
    public Optional<Path> path() {
        return path;
    }

    Reading<Project> project() {
        return stream.map(in -> ProjectFile.read(in, name)).orElseGet(() -> ProjectFile.read(path.orElseThrow()));
    }

    /** All of it; a stream is used up then. */
    byte[] bytes() throws IOException {
        return stream.isPresent() ? stream.get().readAllBytes() : Files.readAllBytes(path.orElseThrow());
    }

    Reading<Plan> plan() {
        return stream.map(in -> PlanFile.read(in, name)).orElseGet(() -> PlanFile.read(path.orElseThrow()));
    }

    Reading<Plan> plan(Project project) {
        return stream.map(in -> PlanFile.read(in, name, project))
                .orElseGet(() -> PlanFile.read(path.orElseThrow(), project));
    }

    Reading<PlanMoves> moves() {
        return stream.map(in -> MovesFile.read(in, name)).orElseGet(() -> MovesFile.read(path.orElseThrow()));
    }

    Reading<EventScript> script(Project project) {
        return stream.map(in -> ScriptFile.read(in, name, project))
                .orElseGet(() -> ScriptFile.read(path.orElseThrow(), project));
    }

    Reading<TitleBlock> titleBlock() {
        return stream.map(in -> TitleBlockFile.read(in, name)).orElseGet(() -> TitleBlockFile.read(path.orElseThrow()));
    }

    private interface Writing {
        void to(ByteArrayOutputStream out) throws WriteFailed;
    }

    private static Source bytes(String name, Writing writing) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            writing.to(out);
        } catch (WriteFailed e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return stream(new ByteArrayInputStream(out.toByteArray()), name);
    }
}
