package evenrise.solver.app;

/**
 * Whether a job is to end early. A search that is cancelled ends soon with the best that it has, and the job goes on to
 * its end with that.
 *
 * @since 0.1.0
 */
public interface Cancellation {
    Cancellation NEVER = new Cancellation() {
        @Override
        public boolean isCancelled() {
            return false;
        }

        @Override
        public void whenCancelled(Runnable stop) {}
    };

    boolean isCancelled();

    /**
     * Called by the job once there is something to end.
     *
     * @param stop to be run once by whoever cancels, from any thread; at once where that has happened
     */
    void whenCancelled(Runnable stop);
}
