package evenrise.solver.app;

import java.util.ArrayList;
import java.util.List;

/**
 * Cancels jobs when it is told to, from any thread.
 *
 * @since 0.1.0
 */
public final class CancelSwitch implements Cancellation {
    private final List<Runnable> stops = new ArrayList<>();
    private volatile boolean isCancelled;

    public void cancel() {
        List<Runnable> waiting;
        synchronized (stops) {
            isCancelled = true;
            waiting = List.copyOf(stops);
            stops.clear();
        }
        waiting.forEach(Runnable::run);
    }

    @Override
    public boolean isCancelled() {
        return isCancelled;
    }

    @Override
    public void whenCancelled(Runnable stop) {
        synchronized (stops) {
            if (!isCancelled) {
                stops.add(stop);
                return;
            }
        }
        stop.run();
    }
}
