package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.Format;
import evenrise.model.file.KeptFile;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.solver.rework.KeptRework;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * The best plan of a search that still goes on, kept in a file beside the plan that is to be written, so that a power cut
 * or a kill loses no more than some seconds of it; of a rework, all plans that are worth it. It goes when what was searched
 * for is written.
 */
final class Checkpoint {
    private static final String ENDING = ".checkpoint.json";
    private static final String EARLIER_ENDING = ".checkpoint-before.json";

    /** Of the file in a folder. */
    private static final String REWORK = "rework";

    private final Path file;
    private final Path before;

    private Checkpoint(Path file, Path before) {
        this.file = file;
        this.before = before;
    }

    static Checkpoint besides(Path plan) {
        String name = plan.getFileName().toString();
        return new Checkpoint(plan.resolveSibling(name + ENDING), plan.resolveSibling(name + EARLIER_ENDING));
    }

    /** In the folder that a rework goes to. */
    static Checkpoint within(Path folder) {
        return besides(folder.resolve(REWORK));
    }

    /** The file, whether it is there or not. */
    Path file() {
        return file;
    }

    /** The file of a search that was cut off, if there is one. */
    Optional<Path> left() {
        return Files.isRegularFile(file) ? Optional.of(file) : Optional.empty();
    }

    /** Puts what a search that was cut off has left aside, so that a new one does not overwrite it; gives where it is. */
    Path putAside() {
        try {
            return Files.move(file, before, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT,
                    "'" + Harmless.shown(file.toString())
                            + "', left by a search that was cut off, cannot be put aside.");
        }
    }

    /**
     * Keeps the best plan of a search until the answer is closed.
     *
     * @param best gives the plan to keep
     * @param madeBy says of which project it is
     * @param note told once when it cannot be kept
     */
    CheckpointWriter<Plan> keeping(Supplier<Optional<Plan>> best, MadeBy madeBy, Consumer<String> note) {
        return new CheckpointWriter<>(
                best, plan -> PlanFile.write(plan.withMadeBy(Optional.of(madeBy)), file, Format.JSON), note);
    }

    /** Keeps what a rework has found until the answer is closed. */
    CheckpointWriter<KeptRework> keeping(Supplier<KeptRework> found, Consumer<String> note) {
        return new CheckpointWriter<>(() -> Optional.of(found.get()), kept -> KeptFile.write(kept, file), note);
    }

    /** The plan is written, and this is no longer needed. */
    void remove() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // It is as good as the plan at some earlier moment; whoever plans next is told of it.
            return;
        }
    }
}
