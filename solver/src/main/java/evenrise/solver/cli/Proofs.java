package evenrise.solver.cli;

import evenrise.model.plan.Bounds;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.exact.ExactProver;
import java.util.Optional;
import java.util.function.Consumer;

/** Bounds of every project by short arguments; of small ones, after that, by the exact model. */
final class Proofs implements BoundSource {
    /** The exact model's package is not even loaded for a project that it would leave alone. */
    private final BoundSource exact;

    private volatile Bounds bounds;
    private volatile boolean stopped;

    /** @param note takes what is to be said once, such as why nothing more can be proven */
    Proofs(PlanningRequest request, Consumer<String> note) {
        exact = ExactProver.isSmall(request.project()) ? new ExactProver(request.threads(), note) : BoundSource.NONE;
    }

    @Override
    public void work(Project project, Budget budget, long seed, Desk desk) {
        bounds = ProvenBounds.of(project, () -> stopped);
        desk.bound(bounds.objective());
        if (!stopped) {
            exact.work(project, budget, seed, desk);
        }
    }

    Optional<Bounds> bounds() {
        return Optional.ofNullable(bounds);
    }

    @Override
    public void stop() {
        stopped = true;
        exact.stop();
    }
}
