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
import evenrise.solver.exhaustive.ExhaustiveProver;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Of small projects with one panel by looking at all that could be better; of others with a few panels by who shares a
 * phase, and, where they are small, after that by the exact model; of plants with feeder
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
        private final Consumer<String> note;
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
            this.note = note;
            boolean isPlain = isPlain();
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
            boolean counts = isPlain()
                    && LadderProver.tellsPanelsApart(project)
                    && !ExactProver.isSmall(project)
                    && request.from().isEmpty();
            return counts ? new LadderProver(project, 0).shares() : PhaseShares.NONE;
        }

        @Override
        public void begin(Bounds known, BoundSource.Incumbent incumbent) {
            Project project = request.project();
            if (isPlain() && LadderProver.suits(project)) {
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
            if (takesAProcessor() && isLookedThrough(better, incumbent)) {
                return;
            }
            proven = ExactKnown.peak(bounds.peakInrushAmps());
            phases.ifPresent(prover -> shared(prover, better, incumbent));
            if (!stopped && exact.isPresent()) {
                sequenced(incumbent);
                exact.get().know(proven);
                exact.get().work(request.project(), request.budget(), request.seed(), incumbent);
            }
        }

        @Override
        public boolean takesAProcessor() {
            return isPlain() && ExhaustiveProver.suits(request.project());
        }

        private boolean isPlain() {
            return PlantPart.of(request.project()).isEmpty();
        }

        /** Whether nothing is left to prove. */
        private boolean isLookedThrough(Consumer<Bounds> better, BoundSource.Incumbent incumbent) {
            Project project = request.project();
            ExhaustiveEffort effort = new ExhaustiveEffort(request.budget());
            ExhaustiveProver prover = new ExhaustiveProver(
                    project,
                    effort.mostSteps(),
                    () -> stopped || effort.isUp(),
                    new SlotProgram(project)::of,
                    incumbent);
            double peakAmps = prover.peakAmps();
            if (peakAmps > bounds.peakInrushAmps()) {
                bounds = bounds.withPeakInrushAmps(peakAmps);
                better.accept(bounds);
            }
            try {
                return prover.prove(bounds.objective());
            } catch (Unfit e) {
                note.accept("less is proven of this project: " + e.getMessage());
                return false;
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
