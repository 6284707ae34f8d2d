package evenrise.solver.engine;

import java.util.function.Consumer;

/** Plans one project. {@link #plan()} runs in the caller's thread; {@link #stop()} may be called from any other. */
public final class Planner {
    public Planner(PlanningRequest request, Consumer<Progress> listener) {}

    /** Searches until the budget is used or {@link #stop()} is called; gives the best plan either way. */
    public PlanningOutcome plan() {
        throw new UnsupportedOperationException("being written");
    }

    /** Ends the search soon; the best plan so far is kept. */
    public void stop() {}
}
