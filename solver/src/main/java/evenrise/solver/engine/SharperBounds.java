package evenrise.solver.engine;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.function.Consumer;

/**
 * Proves more of some projects than short arguments do. An optional part of the program: whoever is on the class path
 * is found as a service, and without one the usual bounds stand.
 */
public interface SharperBounds {
    /** Whether anything more may be proven of such a project; loads nothing native. */
    boolean suit(Project project);

    /**
     * Prepares the work on a project that they suit; nothing has begun when this returns.
     *
     * @param note takes what is to be said once, such as why nothing more can be proven
     */
    Work on(PlanningRequest request, Consumer<String> note);

    /**
     * How many moves lie between a plan as built and every plan that keeps the hard rules: breakers that are elsewhere, and
     * control leads that are on another output, or whose breaker is in another panel. 0 where nothing is proven.
     *
     * @param built may leave out loads; those are moves, too
     */
    default int leastMoves(PlanningRequest request, Plan built) {
        return 0;
    }

    /** The work on one project. */
    interface Work {
        /** Who had best sit on which phases, by what a bound shares out; none where that says nothing. Takes a second or two. */
        default PhaseShares shares() {
            return PhaseShares.NONE;
        }

        /** Whether it is worth a processor of its own: where it may well prove the best plan, soon. */
        default boolean takesAProcessor() {
            return false;
        }

        /**
         * What takes so little work that it need not wait until short arguments are through.
         *
         * @param known what the shortest have proven
         */
        void begin(Bounds known, BoundSource.Incumbent incumbent);

        /**
         * Works until all is proven that can be, the budget is used or {@link #stop} is called.
         *
         * @param known what short arguments have proven
         * @param better takes each bounds that are sharper than those before
         */
        void sharpen(Bounds known, Consumer<Bounds> better, BoundSource.Incumbent incumbent);

        /** Ends the work soon; may be called from any thread, also before the work has begun. */
        void stop();
    }
}
