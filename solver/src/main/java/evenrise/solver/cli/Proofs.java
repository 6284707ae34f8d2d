package evenrise.solver.cli;

import evenrise.model.plan.Bounds;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.exact.ExactProver;
import evenrise.solver.exact.PhaseProver;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Bounds of every project by short arguments; of those of a few panels, after that, by who shares a phase; of small ones by
 * the exact model.
 */
final class Proofs implements BoundSource {
    /** Nothing native is loaded for a project that this and the next would leave alone. */
    private final Optional<ExactProver> exact;

    private final Optional<PhaseProver> phases;
    private final int threads;
    private final Consumer<String> note;

    private volatile Bounds bounds;
    private volatile boolean stopped;

    /** @param note takes what is to be said once, such as why nothing more can be proven */
    Proofs(PlanningRequest request, Consumer<String> note) {
        this.note = note;
        threads = request.threads();
        phases = PhaseProver.suits(request.project()) ? Optional.of(new PhaseProver()) : Optional.empty();
        exact = ExactProver.isSmall(request.project())
                ? Optional.of(new ExactProver(request.threads(), note))
                : Optional.empty();
    }

    @Override
    public void work(Project project, Budget budget, long seed, Desk desk) {
        bounds = ProvenBounds.of(project, () -> stopped);
        desk.bound(bounds.objective());
        phases.ifPresent(prover -> shared(prover, project, budget, seed, desk));
        if (!stopped && exact.isPresent()) {
            exact.get().knowPeak(bounds.peakInrushAmps());
            exact.get().work(project, budget, seed, desk);
        }
    }

    private void shared(PhaseProver prover, Project project, Budget budget, long seed, Desk desk) {
        double peakAmps = prover.peakAmps(project, budget, seed, threads);
        if (peakAmps > bounds.peakInrushAmps()) {
            bounds = ProvenBounds.of(project, peakAmps, () -> stopped);
            desk.bound(bounds.objective());
        }
        if (exact.isPresent()) {
            double amps = prover.peakAndDeviationsAmps(project, bounds.peakInrushAmps(), budget, seed, threads);
            desk.bound(ProvenBounds.objective(project, bounds, amps));
        }
    }

    @Override
    public void failed(Throwable why) {
        note.accept("the proofs ended early by a failure (" + why
                + "). The plan is whole; what was proven before it stands, no more.");
    }

    Optional<Bounds> bounds() {
        return Optional.ofNullable(bounds);
    }

    @Override
    public void stop() {
        stopped = true;
        phases.ifPresent(PhaseProver::stop);
        exact.ifPresent(ExactProver::stop);
    }
}
