package evenrise.solver.grid.ignite;

import java.util.Timer;
import java.util.TimerTask;
import java.util.function.Supplier;

/** Interrupts the thread that set it, unless that has done its work in time. */
final class Alarm {
    private final Timer timer = new Timer("alarm", true);
    private final Thread sleeper = Thread.currentThread();
    private boolean isOver;
    private boolean hasRung;

    /** @param millis 0 for never */
    static <T> T within(long millis, Supplier<T> work) {
        Alarm alarm = new Alarm(millis);
        try {
            return work.get();
        } finally {
            alarm.off();
        }
    }

    private Alarm(long millis) {
        if (millis > 0) {
            timer.schedule(
                    new TimerTask() {
                        @Override
                        public void run() {
                            ring();
                        }
                    },
                    millis);
        }
    }

    private synchronized void ring() {
        if (!isOver) {
            hasRung = true;
            sleeper.interrupt();
        }
    }

    private synchronized void off() {
        isOver = true;
        timer.cancel();
        if (hasRung) {
            // The interruption has done what it was for.
            Thread.interrupted();
        }
    }
}
