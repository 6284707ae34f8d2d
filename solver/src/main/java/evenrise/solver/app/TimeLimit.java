package evenrise.solver.app;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Timer;
import java.util.TimerTask;
import java.util.concurrent.CopyOnWriteArrayList;

/** Ends what takes long when somebody cancels or the time is over. */
final class TimeLimit implements AutoCloseable {
    private final Timer timer = new Timer("time limit", true);
    private final List<Runnable> stops = new CopyOnWriteArrayList<>();
    private volatile boolean isOver;

    TimeLimit(Optional<Duration> limit, Cancellation cancellation) {
        cancellation.whenCancelled(this::end);
        limit.ifPresent(each -> timer.schedule(
                new TimerTask() {
                    @Override
                    public void run() {
                        end();
                    }
                },
                each.toMillis()));
    }

    boolean isOver() {
        return isOver;
    }

    /** @param stop run once, at once where the time is over already */
    synchronized void whenOver(Runnable stop) {
        if (isOver) {
            stop.run();
        } else {
            stops.add(stop);
        }
    }

    private synchronized void end() {
        isOver = true;
        stops.forEach(Runnable::run);
        stops.clear();
    }

    @Override
    public void close() {
        timer.cancel();
    }
}
