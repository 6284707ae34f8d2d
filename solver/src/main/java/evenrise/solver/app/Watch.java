package evenrise.solver.app;

import evenrise.solver.engine.Progress;
import java.util.function.Consumer;

/** Tells a listener how a job goes on, several times a second, until it is closed. */
final class Watch implements AutoCloseable {
    private static final long PERIOD_MILLIS = 200;

    private final JobListener listener;
    private final long startNanos = System.nanoTime();
    private final BestProgress best = new BestProgress();
    private final Ticker ticker;
    private volatile Stage stage = Stage.READING;
    private volatile String part = "";

    Watch(JobListener listener) {
        this.listener = listener;
        this.ticker = new Ticker(this::tell, PERIOD_MILLIS);
    }

    void at(Stage next) {
        stage = next;
        part = "";
        tell();
    }

    /** What of the stage the job is at. */
    void at(String words) {
        part = words;
        tell();
    }

    /** May come from any thread. */
    void report(Progress progress) {
        best.take(progress);
    }

    /** What is to be said of the inputs or the search. */
    Consumer<String> notes() {
        return listener::note;
    }

    void part(JobPart part) {
        listener.part(part);
    }

    void estimate(EstimateState state) {
        listener.estimate(state);
    }

    private synchronized void tell() {
        listener.progress(now());
    }

    @Override
    public synchronized void close() {
        ticker.close();
        listener.ended(now());
    }

    private JobProgress now() {
        return new JobProgress(
                stage, part, (System.nanoTime() - startNanos) / 1e9, best.best().map(SearchStanding::of));
    }
}
