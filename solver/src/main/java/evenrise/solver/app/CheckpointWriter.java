package evenrise.solver.app;

import evenrise.model.file.WriteFailed;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Writes what a search has found whenever it is new, until it is closed. */
final class CheckpointWriter<T> implements AutoCloseable {
    /** What is lost by a kill is about this and what finding and writing take: a few seconds, as the pages say. */
    private static final long PERIOD_MILLIS = 4_000;

    private static final long FIRST_MILLIS = 1_000;

    /** Puts it where it is kept, as a whole or not at all. */
    interface Writing<T> {
        void write(T found) throws WriteFailed;
    }

    private final ScheduledExecutorService service = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "checkpoint");
        thread.setDaemon(true);
        return thread;
    });
    private final Supplier<Optional<T>> found;
    private final Writing<T> writing;
    private final Consumer<String> note;
    private T last;

    /**
     * @param found gives what is to be kept
     * @param note told once when it cannot be kept
     */
    CheckpointWriter(Supplier<Optional<T>> found, Writing<T> writing, Consumer<String> note) {
        this.found = found;
        this.writing = writing;
        this.note = note;
        service.scheduleWithFixedDelay(this::keep, FIRST_MILLIS, PERIOD_MILLIS, TimeUnit.MILLISECONDS);
    }

    /** Keeps what there is now, too. */
    synchronized void keep() {
        Optional<T> now = found.get().filter(each -> !each.equals(last));
        if (now.isPresent() && !service.isShutdown()) {
            try {
                writing.write(now.get());
                last = now.get();
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
