package evenrise.solver.grid;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Comes once, from any thread, to all who listen. */
public final class StopSignal {
    private final Set<Runnable> listeners = new LinkedHashSet<>();
    private boolean hasCome;

    /** Ends what goes on by {@link #during}. */
    public void stop() {
        List<Runnable> all;
        synchronized (listeners) {
            hasCome = true;
            all = List.copyOf(listeners);
        }
        all.forEach(Runnable::run);
    }

    public boolean hasCome() {
        synchronized (listeners) {
            return hasCome;
        }
    }

    /**
     * Runs {@code work}; whoever stops meanwhile, or has stopped before, runs {@code whenStopped}.
     *
     * @param whenStopped ends the work soon, from any thread
     */
    public void during(Runnable work, Runnable whenStopped) {
        boolean isLate;
        synchronized (listeners) {
            isLate = hasCome;
            listeners.add(whenStopped);
        }
        if (isLate) {
            whenStopped.run();
        }
        try {
            work.run();
        } finally {
            synchronized (listeners) {
                listeners.remove(whenStopped);
            }
        }
    }
}
