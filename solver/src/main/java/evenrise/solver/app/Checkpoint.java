package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * The best plan of a search that still goes on, kept in a file beside the plan that is to be written, so that a power cut
 * or a kill loses no more than some seconds of it. It goes when the plan is written.
 */
final class Checkpoint {
    /** Less than the five seconds that README promises to lose at the most: finding and writing take time, too. */
    private static final long PERIOD_MILLIS = 4_000;

    private static final long FIRST_MILLIS = 1_000;

    private static final String ENDING = ".checkpoint.json";
    private static final String EARLIER_ENDING = ".checkpoint-before.json";

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
    Keeper keeping(Supplier<Optional<Plan>> best, MadeBy madeBy, Consumer<String> note) {
        return new Keeper(best, madeBy, note);
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

    /** Writes the best plan whenever there is a new one. */
    final class Keeper implements AutoCloseable {
        private final ScheduledExecutorService service = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "checkpoint");
            thread.setDaemon(true);
            return thread;
        });
        private final Supplier<Optional<Plan>> best;
        private final MadeBy madeBy;
        private final Consumer<String> note;
        private Plan last;

        private Keeper(Supplier<Optional<Plan>> best, MadeBy madeBy, Consumer<String> note) {
            this.best = best;
            this.madeBy = madeBy;
            this.note = note;
            service.scheduleWithFixedDelay(this::keep, FIRST_MILLIS, PERIOD_MILLIS, TimeUnit.MILLISECONDS);
        }

        private void keep() {
            Optional<Plan> plan = best.get().filter(each -> !each.equals(last));
            if (plan.isPresent()) {
                try {
                    PlanFile.write(plan.get().withMadeBy(Optional.of(madeBy)), file, Format.JSON);
                    last = plan.get();
                } catch (WriteFailed e) {
                    note.accept("the best plan so far cannot be kept on the way: " + e.getMessage());
                    service.shutdown();
                }
            }
        }

        /** Waits for a file that is being written: an interrupt would leave it half. */
        @Override
        public void close() {
            service.shutdown();
            try {
                service.awaitTermination(1, TimeUnit.MINUTES);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
