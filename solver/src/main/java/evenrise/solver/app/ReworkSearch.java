package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.Kept;
import evenrise.solver.rework.NightLimits;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where a rework leads to: the best of what a search around the plan as built finds, or a plan that is given. */
final class ReworkSearch {
    private static final int MOST_POINTS = 12;

    private final PlannerSource planners;
    private final ReworkRequest asked;
    private final JobControl control;
    private final Watch watch;

    /** The front, the plan of it that was chosen, and what is to be said of that. */
    record Found(Front front, FrontPoint chosen, Evaluation evaluation) {}

    ReworkSearch(PlannerSource planners, ReworkRequest asked, JobControl control, Watch watch) {
        this.planners = planners;
        this.asked = asked;
        this.control = control;
        this.watch = watch;
    }

    /**
     * @param sha256 of the project's file
     * @param kept what one search keeps on the way and goes on from; many keep what has ended
     */
    Found search(
            String sha256,
            PlanningRequest request,
            BuiltPlant plant,
            NightLimits night,
            Optional<ReworkCheckpoint> kept) {
        Project project = request.project();
        Plan built = plant.staying();
        Project held = Kept.inPlace(project, built, asked.keepsRunning(), night);
        AroundBuilt.Found found = asked.manySeeds()
                .map(manySeeds ->
                        new ReworkSeeds(planners, asked, manySeeds, control, watch).search(request, held, built))
                .orElseGet(() ->
                        new AroundBuilt(planners, watch, control.cancellation()).search(request, held, built, kept));
        watch.at(Stage.BOUNDS);
        Optional<Bounds> bounds = Optional.of(ProvenBounds.of(project));
        int leastMoves = leastMoves(request, plant);
        watch.at(Stage.JUDGING);
        Front whole = Front.of(
                        plant,
                        found.plans().stream()
                                .filter(plan -> Kept.isReached(project, built, plan, asked.keepsRunning(), night))
                                .toList())
                .atLeast(leastMoves);
        FrontPoint picked = whole.choose(asked.perMoveAmps(), asked.maxMoves());
        return finished(sha256, request, found.asNew(), bounds, whole.thinned(MOST_POINTS, picked), picked);
    }

    /** The front is that plan alone, whatever it breaks. */
    Found given(String sha256, PlanningRequest request, BuiltPlant plant, Plan target) {
        watch.at(Stage.BOUNDS);
        int leastMoves = leastMoves(request, plant);
        watch.at(Stage.JUDGING);
        Front front = Front.to(plant, target).atLeast(leastMoves);
        PlanningOutcome nothing = new PlanningOutcome(target, 0, 0, OptionalDouble.empty());
        Optional<Bounds> bounds = Optional.of(ProvenBounds.of(request.project()));
        return finished(sha256, request, nothing, bounds, front, front.cureOnly());
    }

    private static Found finished(
            String sha256,
            PlanningRequest request,
            PlanningOutcome outcome,
            Optional<Bounds> bounds,
            Front front,
            FrontPoint picked) {
        Map<Plan, Evaluation> evaluations = new IdentityHashMap<>();
        Front finished = front.finished(bare -> {
            Evaluation evaluation = Finishing.evaluated(sha256, request, outcome, bare, bounds);
            Plan plan = evaluation.plan();
            evaluations.put(plan, evaluation);
            return plan;
        });
        FrontPoint chosen = finished.like(picked);
        return new Found(finished, chosen, evaluations.get(chosen.plan()));
    }

    /** An interrupt leaves no time for it. */
    private int leastMoves(PlanningRequest request, BuiltPlant plant) {
        return control.cancellation().isCancelled() ? 0 : Proofs.leastMoves(request, plant.staying());
    }
}
