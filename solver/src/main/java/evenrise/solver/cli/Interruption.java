package evenrise.solver.cli;

import evenrise.solver.app.Cancellation;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Lets Ctrl-C (or a polite kill) end a search and not the program: the process waits until the best plan is written. The
 * JVM's own exit code for the signal stands (130 for Ctrl-C) unless the plan could not be written.
 */
final class Interruption implements Cancellation {
    private static final long PATIENCE_SECONDS = 60;

    private final CountDownLatch finished = new CountDownLatch(1);
    private volatile boolean happened;
    private volatile int exitCode;
    private Thread hook;

    /** From here on a signal calls {@code stop}, which ends the search soon; where one came before, at once. */
    @Override
    public void whenCancelled(Runnable stop) {
        Thread next = new Thread(() -> onSignal(stop), "interruption");
        try {
            Runtime.getRuntime().addShutdownHook(next);
            hook = next;
        } catch (IllegalStateException e) {
            // A signal came before there was anything to stop: the process is ending.
            happened = true;
            stop.run();
        }
    }

    @Override
    public boolean isCancelled() {
        return happened;
    }

    /** To be called when everything is written and flushed; the process may end at once. */
    void finished(int code) {
        exitCode = code;
        finished.countDown();
        if (hook != null && !happened) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {
                // A signal came this very moment: the process is ending, and nothing is left to do.
                happened = true;
            }
        }
    }

    /**
     * Ends the process with this exit code, or leaves that to the signal that is ending it: between the last hook and the
     * end the JVM would take a second exit code for the first.
     */
    void exit(int code) {
        while (happened) {
            LockSupport.park(this);
        }
        System.exit(code);
    }

    private void onSignal(Runnable stop) {
        happened = true;
        stop.run();
        try {
            if (!finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (exitCode == ExitCode.NOT_WRITTEN || exitCode == ExitCode.BUG) {
            Runtime.getRuntime().halt(exitCode);
        }
    }
}
