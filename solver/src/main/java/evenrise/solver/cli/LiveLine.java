package evenrise.solver.cli;

import evenrise.solver.engine.Progress;
import evenrise.solver.report.ProgressText;
import java.io.PrintWriter;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** One line of a terminal, written over and over; it fits 80 columns, so that it never wraps. */
final class LiveLine implements ProgressView {
    private static final long PERIOD_MILLIS = 200;
    private static final String TO_START_AND_CLEAR = "\r\u001b[K";

    private final PrintWriter writer;
    private final LongSupplier nanoTime;
    private final long startNanos;
    private final BestProgress best = new BestProgress();
    private final ScheduledExecutorService ticker = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "live line");
        thread.setDaemon(true);
        return thread;
    });

    LiveLine(PrintWriter writer, LongSupplier nanoTime) {
        this.writer = writer;
        this.nanoTime = nanoTime;
        this.startNanos = nanoTime.getAsLong();
    }

    LiveLine start() {
        ticker.scheduleAtFixedRate(this::draw, 0, PERIOD_MILLIS, TimeUnit.MILLISECONDS);
        return this;
    }

    @Override
    public void report(Progress progress) {
        best.take(progress);
    }

    /** Writes the line anew. */
    synchronized void draw() {
        double elapsed = (nanoTime.getAsLong() - startNanos) / 1e9;
        writer.print(TO_START_AND_CLEAR + ProgressText.line(elapsed, best.best()));
        writer.flush();
    }

    @Override
    public void close() {
        ticker.shutdown();
        draw();
        writer.println();
    }
}
