package evenrise.solver.cli;

import evenrise.solver.engine.Planner;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.Progress;
import java.util.function.Consumer;

/** Gives a search for a request. Tests put a quick one in the engine's place. */
@FunctionalInterface
interface PlannerSource {
    /** The engine. */
    PlannerSource ENGINE = (request, listener) -> {
        QuietLibraries.hush();
        Planner planner = new Planner(request, listener);
        return new Search() {
            @Override
            public PlanningOutcome plan() {
                return planner.plan();
            }

            @Override
            public void stop() {
                planner.stop();
            }
        };
    };

    Search search(PlanningRequest request, Consumer<Progress> listener);

    /** See {@link Planner}. */
    interface Search {
        PlanningOutcome plan();

        void stop();
    }
}
