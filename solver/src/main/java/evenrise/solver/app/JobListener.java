package evenrise.solver.app;

/**
 * Hears how a job goes on, to its end: while plans are searched, bounds proven and documents written. Calls come from the
 * job's threads, one at a time but for notes and parts.
 *
 * @since 0.1.0
 */
@FunctionalInterface
public interface JobListener {
    JobListener NONE = progress -> {};

    /** Several times a second, and whenever the stage changes. */
    void progress(JobProgress progress);

    /** Once, when the job has ended, however it did. */
    default void ended(JobProgress last) {}

    /** Something of the inputs or the search that whoever asked for the job should know. */
    default void note(String text) {}

    /** One of many things is done. */
    default void part(JobPart part) {}

    /** What is known of an estimate, from time to time: first the list by price, then after each round of plans. */
    default void estimate(EstimateState state) {}
}
