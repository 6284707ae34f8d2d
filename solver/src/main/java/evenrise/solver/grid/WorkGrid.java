package evenrise.solver.grid;

import java.util.List;
import java.util.function.BiConsumer;

/** Slots that jobs run in, one each, as they become free: those of this machine, or of many. */
public interface WorkGrid {
    /**
     * Runs every job to its end. One that fails stops no other.
     *
     * @param landed takes each answer as it comes, one at a time; what it throws ends the run
     * @param stop ends the run soon; jobs that have not landed by then are dropped
     */
    void run(List<GridJob> jobs, BiConsumer<GridJob, GridAnswer> landed, StopSignal stop);

    /** How many jobs run side by side. */
    int slots();
}
