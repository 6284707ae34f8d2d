package evenrise.solver.app;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Does one small thing over and over, until it is closed; it never keeps the program alive. */
final class Ticker implements AutoCloseable {
    private final ScheduledExecutorService service = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "ticker");
        thread.setDaemon(true);
        return thread;
    });

    Ticker(Runnable tick, long periodMillis) {
        service.scheduleAtFixedRate(tick, 0, periodMillis, TimeUnit.MILLISECONDS);
    }

    @Override
    public void close() {
        service.shutdownNow();
    }
}
