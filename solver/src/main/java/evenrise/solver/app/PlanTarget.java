package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where a plan goes: a file, a stream, or nowhere but into the result. Beside a file the best plan is kept while the search
 * goes on.
 *
 * @since 0.1.0
 */
public final class PlanTarget {
    /** Into the result alone. */
    public static final PlanTarget NONE = new PlanTarget(Optional.empty(), Optional.empty());

    private static final String PROJECT_ENDINGS = "(?i)(\\.project)?\\.(json|yaml|yml)$";
    private static final String PLAN_ENDING = ".plan.json";
    private static final String ANSWERS_ENDING = ".answers";

    private final Optional<Path> file;
    private final Optional<OutputStream> stream;

    private PlanTarget(Optional<Path> file, Optional<OutputStream> stream) {
        this.file = file;
        this.stream = stream;
    }

    /** YAML by its name's ending, else JSON. */
    public static PlanTarget file(Path file) {
        return new PlanTarget(Optional.of(file), Optional.empty());
    }

    /** JSON; the stream stays open. */
    public static PlanTarget stream(OutputStream out) {
        return new PlanTarget(Optional.empty(), Optional.of(out));
    }

    /** Beside a project's file, with the same name and an ending of its own. */
    public static PlanTarget besides(Path project) {
        String name = project.getFileName().toString().replaceFirst(PROJECT_ENDINGS, "");
        return file(project.resolveSibling(name + PLAN_ENDING));
    }

    /** The file; empty where it is none. */
    public Optional<Path> file() {
        return file;
    }

    /** @throws JobFailed where no plan could be written there, so that nobody waits for a plan that gets lost */
    void check(List<Source> inputs) {
        file.ifPresent(path -> {
            Outputs.refuseInputs(path, inputs);
            refuseWhatCannotBeWritten(path);
        });
    }

    /** Where the best plan is kept while the search goes on; none for a stream. */
    Optional<Checkpoint> checkpoint() {
        return file.filter(path -> !Files.exists(path) || Files.isRegularFile(path))
                .map(Checkpoint::besides);
    }

    /**
     * Where answers of searches by many seeds are kept until the plan is written.
     *
     * @throws JobFailed where it goes to no file
     */
    Path answers() {
        return file.filter(path -> !Files.exists(path) || Files.isRegularFile(path))
                .map(path -> path.resolveSibling(path.getFileName() + ANSWERS_ENDING))
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "what many searches find is kept beside the plan until all have ended. Name a file with -o."));
    }

    /** @throws JobFailed where the plan could not be written; an earlier file is whole then */
    void write(Plan plan) {
        try {
            if (file.isPresent()) {
                PlanFile.write(plan, file.get(), Format.ofName(file.get().toString()));
            } else if (stream.isPresent()) {
                PlanFile.write(plan, stream.get(), Format.JSON);
            }
        } catch (WriteFailed e) {
            // Whoever gave a stream knows what is wrong with it.
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT,
                    file.isEmpty() ? List.of() : List.of(e.getMessage() + earlierFile(file.get())));
        }
    }

    private static String earlierFile(Path file) {
        return Files.isRegularFile(file) ? " The earlier plan there is as it was." : "";
    }

    private static void refuseWhatCannotBeWritten(Path file) {
        if (Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file)) {
            return; // A pipe or a device takes what it is given.
        }
        Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(file);
        if (Files.isDirectory(file)) {
            throw failed("output " + shown(file) + " is a folder. Name a file in it.");
        } else if (!Files.isDirectory(folder)) {
            throw failed("output " + shown(file) + ": there is no folder " + shown(folder) + ".");
        } else if (!Files.isWritable(folder)) {
            throw failed("output " + shown(file) + ": the folder " + shown(folder) + " may not be written to.");
        }
    }

    private static JobFailed failed(String message) {
        return new JobFailed(JobFailed.Reason.OUTPUT, message);
    }

    private static String shown(Path path) {
        return Phrase.quoted(Harmless.shown(path.toString()));
    }
}
