package evenrise.solver.engine;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.Optional;

/**
 * Proves what no plan of a project can stay below, while the search goes on or, where moves are counted, after it. With
 * a time it may work in a thread of its own until it is stopped.
 */
public interface BoundSource {
    /** Proves nothing. */
    BoundSource NONE = new BoundSource() {
        @Override
        public void work(Project project, Budget budget, long seed, Incumbent incumbent) {}

        @Override
        public void stop() {}
    };

    /** Works until it has proven all that it can, the budget is used or {@link #stop} is called. */
    void work(Project project, Budget budget, long seed, Incumbent incumbent);

    /**
     * Who had best sit on which phases, by what a bound shares out; asked once, before a search begins. Guidance alone:
     * whatever it says, every plan can still be found.
     */
    default PhaseShares shares() {
        return PhaseShares.NONE;
    }

    /** Whether it is worth a processor of its own, so that beside it one search less is run. */
    default boolean takesAProcessor() {
        return false;
    }

    /** Ends the work soon; may be called from any thread, also before the work has begun. */
    void stop();

    /** Told what went wrong where {@link #work} ended in a failure; the search goes on without its proofs. */
    default void failed(Throwable why) {}

    /** Where proofs and plans are exchanged with the search; any thread may use it. */
    interface Incumbent {
        /** No plan that keeps every rule has an objective below this, in ampere-equivalents. */
        void bound(double objectiveAmps);

        /** What is proven by then, in ampere-equivalents; 0 where nothing is. */
        default double proven() {
            return 0;
        }

        /** A plan that keeps every rule; it counts if it is the best so far. */
        void plan(Plan plan);

        /** The best plan so far that keeps every rule, timed. */
        Optional<Plan> best();
    }
}
