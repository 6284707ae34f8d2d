package evenrise.solver.exact;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.SharperBounds;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Of projects of a few panels by who shares a phase; of small ones, after that, by the exact model; of plants with feeder
 * trees, systems or scenes by what their sources must bear.
 */
public final class ExactBounds implements SharperBounds {
    @Override
    public boolean suit(Project project) {
        return PlantPart.of(project).isEmpty()
                ? LadderProver.suits(project) || PhaseProver.suits(project) || ExactProver.isSmall(project)
                : DistributionProver.suits(project);
    }

    @Override
    public Work on(PlanningRequest request, Consumer<String> note) {
        return new Provers(request, note);
    }

    @Override
    public int leastMoves(PlanningRequest request, Plan built) {
        return LeastMovesProver.suits(request.project()) ? new LeastMovesProver().moves(request, built) : 0;
    }

    private static final class Provers implements Work {
        private final PlanningRequest request;
        private final Optional<ExactProver> exact;
        private final Optional<PhaseProver> phases;
        private final Optional<DistributionProver> distribution;
        private final SequenceProver sequence = new SequenceProver();
        private Bounds bounds;
        private double ladderAmps;
        private ExactKnown proven;
        private volatile boolean stopped;

        Provers(PlanningRequest request, Consumer<String> note) {
            this.request = request;
            boolean isPlain = PlantPart.of(request.project()).isEmpty();
            phases =
                    isPlain && PhaseProver.suits(request.project()) ? Optional.of(new PhaseProver()) : Optional.empty();
            exact = isPlain && ExactProver.isSmall(request.project())
                    ? Optional.of(new ExactProver(request.threads(), note))
                    : Optional.empty();
            distribution = !isPlain && DistributionProver.suits(request.project())
                    ? Optional.of(new DistributionProver())
                    : Optional.empty();
        }

        @Override
        public PhaseShares shares() {
            Project project = request.project();
            boolean counts = PlantPart.of(project).isEmpty()
                    && LadderProver.tellsPanelsApart(project)
                    && !ExactProver.isSmall(project)
                    && request.from().isEmpty();
            return counts ? new LadderProver(project, 0).shares() : PhaseShares.NONE;
        }

        @Override
        public void begin(Bounds known, BoundSource.Incumbent incumbent) {
            Project project = request.project();
            if (PlantPart.of(project).isEmpty() && LadderProver.suits(project)) {
                ladderAmps = new LadderProver(project, known.peakInrushAmps()).amps(() -> stopped);
                incumbent.bound(ProvenBounds.objective(project, known, ladderAmps));
            }
        }

        @Override
        public void sharpen(Bounds known, Consumer<Bounds> better, BoundSource.Incumbent incumbent) {
            bounds = known;
            distribution.ifPresent(prover -> distributed(prover, better, incumbent));
            if (ladderAmps > 0) {
                incumbent.bound(ProvenBounds.objective(request.project(), known, ladderAmps));
            }
            proven = ExactKnown.peak(known.peakInrushAmps());
            phases.ifPresent(prover -> shared(prover, better, incumbent));
            if (!stopped && exact.isPresent()) {
                sequenced(incumbent);
                exact.get().know(proven);
                exact.get().work(request.project(), request.budget(), request.seed(), incumbent);
            }
        }

        private void distributed(DistributionProver prover, Consumer<Bounds> better, BoundSource.Incumbent incumbent) {
            Project project = request.project();
            double amps = prover.amps(project, request.budget(), request.seed());
            double objective = ProvenBounds.objectiveOfPlant(project, bounds, amps);
            if (objective > bounds.objective()) {
                bounds = bounds.withObjective(objective);
                better.accept(bounds);
                incumbent.bound(objective);
            }
        }

        private void shared(PhaseProver prover, Consumer<Bounds> better, BoundSource.Incumbent incumbent) {
            Project project = request.project();
            double peakAmps = prover.peakAmps(
                    project, bounds.peakInrushAmps(), request.budget(), request.seed(), request.threads());
            if (peakAmps > bounds.peakInrushAmps()) {
                bounds = ProvenBounds.of(project, peakAmps, () -> stopped);
                better.accept(bounds);
                incumbent.bound(bounds.objective());
            }
            if (exact.isPresent()) {
                double amps = prover.peakAndDeviationsAmps(
                        project, bounds.peakInrushAmps(), request.budget(), request.seed(), request.threads());
                incumbent.bound(ProvenBounds.objective(project, bounds, amps));
                proven = new ExactKnown(bounds.peakInrushAmps(), amps, 0);
            }
        }

        /** What boards need by themselves is added to what currents need by themselves. */
        private void sequenced(BoundSource.Incumbent incumbent) {
            Project project = request.project();
            double most = incumbent
                    .best()
                    .map(plan -> Referee.judge(project, plan).metrics().objective())
                    .orElse(Double.POSITIVE_INFINITY);
            double amps = sequence.amps(project, proven.mostSeconds(project, most), request.budget(), request.seed());
            proven = new ExactKnown(proven.peakAmps(), proven.peakAndDeviationsAmps(), amps);
            incumbent.bound(Math.max(ladderAmps, proven.peakAndDeviationsAmps()) + amps);
        }

        @Override
        public void stop() {
            stopped = true;
            phases.ifPresent(PhaseProver::stop);
            distribution.ifPresent(DistributionProver::stop);
            sequence.stop();
            exact.ifPresent(ExactProver::stop);
        }
    }
}
