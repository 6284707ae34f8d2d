package evenrise.solver.app;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.search.Planner;
import java.util.Optional;
import java.util.function.Consumer;

/** Gives a search for a request. Tests put a quick one in the engine's place. */
@FunctionalInterface
interface PlannerSource {
    /** The engine. */
    PlannerSource ENGINE = (request, listener, note) -> {
        QuietLibraries.hush();
        Proofs proofs = new Proofs(request, note);
        Planner planner = new Planner(request, listener, proofs);
        return new Search() {
            @Override
            public PlanningOutcome plan() {
                return planner.plan();
            }

            @Override
            public Optional<Bounds> bounds() {
                return proofs.bounds();
            }

            @Override
            public Optional<Plan> best() {
                return planner.best();
            }

            @Override
            public void stop() {
                planner.stop();
            }
        };
    };

    /** @param note takes what is to be said once, such as why nothing can be proven */
    Search search(PlanningRequest request, Consumer<Progress> listener, Consumer<String> note);

    /** See {@link Planner}. */
    interface Search {
        PlanningOutcome plan();

        /** What was proven of the project meanwhile; empty where nothing was, or not in time. */
        default Optional<Bounds> bounds() {
            return Optional.empty();
        }

        /** The best plan so far, timed; any thread may ask while the search goes on. */
        default Optional<Plan> best() {
            return Optional.empty();
        }

        void stop();
    }
}
