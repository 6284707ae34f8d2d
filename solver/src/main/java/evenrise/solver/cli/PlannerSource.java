package evenrise.solver.cli;

import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Planner;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.Progress;
import evenrise.solver.exact.ExactProver;
import java.util.function.Consumer;

/** Gives a search for a request. Tests put a quick one in the engine's place. */
@FunctionalInterface
interface PlannerSource {
    /** The engine. */
    PlannerSource ENGINE = (request, listener, note) -> {
        QuietLibraries.hush();
        Planner planner = new Planner(request, listener, bounds(request, note));
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

    /** @param note takes what is to be said once, such as why nothing can be proven */
    Search search(PlanningRequest request, Consumer<Progress> listener, Consumer<String> note);

    /** Proofs are for small projects; for others their package is not even loaded. */
    private static BoundSource bounds(PlanningRequest request, Consumer<String> note) {
        return ExactProver.isSmall(request.project()) ? new ExactProver(request.threads(), note) : BoundSource.NONE;
    }

    /** See {@link Planner}. */
    interface Search {
        PlanningOutcome plan();

        void stop();
    }
}
