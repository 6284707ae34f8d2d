package evenrise.solver.cli;

import evenrise.solver.engine.Progress;

/** Keeps a view of a search up to date, several times a second, until it is closed. */
final class Watch implements AutoCloseable {
    private static final long PERIOD_MILLIS = 200;

    private final ProgressView view;
    private final long startNanos = System.nanoTime();
    private final BestProgress best = new BestProgress();
    private final Ticker ticker;

    Watch(ProgressView view) {
        this.view = view;
        this.ticker = new Ticker(this::show, PERIOD_MILLIS);
    }

    /** May come from any thread. */
    void report(Progress progress) {
        best.take(progress);
    }

    private synchronized void show() {
        view.show(elapsedSeconds(), best);
    }

    @Override
    public synchronized void close() {
        ticker.close();
        view.end(elapsedSeconds(), best);
    }

    private double elapsedSeconds() {
        return (System.nanoTime() - startNanos) / 1e9;
    }
}
