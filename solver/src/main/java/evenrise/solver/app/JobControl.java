package evenrise.solver.app;

/**
 * Who hears of a job, and who may end it.
 *
 * @since 0.1.0
 */
public record JobControl(JobListener listener, Cancellation cancellation) {
    /** Nobody. */
    public static final JobControl NONE = new JobControl(JobListener.NONE, Cancellation.NEVER);
}
