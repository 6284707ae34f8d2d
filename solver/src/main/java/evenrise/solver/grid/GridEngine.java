package evenrise.solver.grid;

import java.util.function.Consumer;

/**
 * Carries jobs to other processes and their answers back. An optional part of the program: whoever is on the class path is
 * found as a service.
 */
public interface GridEngine {
    /**
     * Slots of all workers of a site. Nothing is joined before there are jobs.
     *
     * @param said takes what happens to workers, as sentences
     */
    WorkGrid driver(GridSite site, Consumer<String> said);

    /**
     * Takes jobs of whoever drives, until it is stopped.
     *
     * @param post where and how much it works
     * @param said takes what happens, as sentences
     * @throws GridUnavailable where it may not join, or what it joins runs another software
     */
    void work(GridSite site, WorkerPost post, GridWork work, Consumer<String> said, StopSignal stop);

    /**
     * @param port that it listens at; 0 for the first of the usual ones that is free
     * @param slots jobs that it runs side by side
     */
    record WorkerPost(int port, int slots) {
        public WorkerPost {
            if (slots < 1) {
                throw new IllegalArgumentException("slots is " + slots + ", expected at least 1");
            }
        }
    }
}
