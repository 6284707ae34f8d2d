package evenrise.solver.cli;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.solver.report.Sanitizer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Where a plan goes: a file, or standard output. */
final class PlanTarget {
    /** Stands for a standard stream in place of a file. */
    static final String STREAM = "-";

    private static final String PROJECT_ENDINGS = "(?i)(\\.project)?\\.(json|yaml|yml)$";
    private static final String PLAN_ENDING = ".plan.json";

    /** Empty for standard output. */
    private final Optional<Path> file;

    private PlanTarget(Optional<Path> file) {
        this.file = file;
    }

    /**
     * @param output as the user gave it; beside the project where he did not
     * @throws Failure where no plan could be written there, so that nobody waits for a plan that gets lost
     */
    static PlanTarget of(Optional<String> output, String project) {
        if (output.isEmpty() && project.equals(STREAM)) {
            throw new Failure(
                    ExitCode.USAGE, "a project from standard input has no name to give the plan. Say -o PLAN or -o -.");
        }
        if (output.isPresent() && output.get().equals(STREAM)) {
            return new PlanTarget(Optional.empty());
        }
        Path file = output.map(Inputs::path).orElseGet(() -> besides(Inputs.path(project)));
        Inputs.refuseAsOutput(file.toString(), project);
        refuseWhatCannotBeWritten(file);
        return new PlanTarget(Optional.of(file));
    }

    boolean isStream() {
        return file.isEmpty();
    }

    /** Where the best plan is kept while the search goes on; none for a stream. */
    Optional<Checkpoint> checkpoint() {
        return file.filter(path -> !Files.exists(path) || Files.isRegularFile(path))
                .map(Checkpoint::besides);
    }

    /** @throws Failure where the plan could not be written; an earlier file is whole then */
    void write(Plan plan, Terminal terminal) {
        try {
            if (file.isPresent()) {
                PlanFile.write(plan, file.get(), Format.ofName(file.get().toString()));
            } else {
                PlanFile.write(plan, terminal.data(), Format.JSON);
            }
        } catch (WriteFailed e) {
            // What is wrong with standard output is said once, by whoever runs the command.
            throw new Failure(ExitCode.NOT_WRITTEN, isStream() ? List.of() : List.of(e.getMessage() + earlierFile()));
        }
    }

    private String earlierFile() {
        return file.filter(Files::isRegularFile).isPresent() ? " The earlier plan there is as it was." : "";
    }

    /** What to say of the written file. */
    List<String> written() {
        return file.map(path -> List.of("", "Written: " + Sanitizer.clean(path.toString())))
                .orElse(List.of());
    }

    private static Path besides(Path project) {
        String name = project.getFileName().toString().replaceFirst(PROJECT_ENDINGS, "");
        return project.resolveSibling(name + PLAN_ENDING);
    }

    private static void refuseWhatCannotBeWritten(Path file) {
        if (Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file)) {
            return; // A pipe or a device takes what it is given.
        }
        Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(file);
        if (Files.isDirectory(file)) {
            throw new Failure(ExitCode.NOT_WRITTEN, "output " + shown(file) + " is a folder. Name a file in it.");
        } else if (!Files.isDirectory(folder)) {
            throw new Failure(
                    ExitCode.NOT_WRITTEN, "output " + shown(file) + ": there is no folder " + shown(folder) + ".");
        } else if (!Files.isWritable(folder)) {
            throw new Failure(
                    ExitCode.NOT_WRITTEN,
                    "output " + shown(file) + ": the folder " + shown(folder) + " may not be written to.");
        }
    }

    private static String shown(Path path) {
        return "'" + Sanitizer.clean(path.toString()) + "'";
    }
}
