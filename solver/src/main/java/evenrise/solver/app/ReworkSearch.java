package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.Kept;
import evenrise.solver.rework.KeptRework;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.NightPrices;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where a rework leads to: the best of what a search around the plan as built finds, or a plan that is given. */
final class ReworkSearch {
    /** Part of the time for a plan as good as new; the rest goes to plans near the one as built. */
    private static final double AS_NEW_PART = 0.4;

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

    /** @param sha256 of the project's file */
    Found search(String sha256, PlanningRequest request, BuiltPlant plant, NightLimits night, ReworkCheckpoint kept) {
        Project project = request.project();
        Plan built = plant.staying();
        NearbySearch nearby = new NearbySearch(
                Kept.inPlace(project, built, asked.keepsRunning(), night),
                built,
                request.seed(),
                watch::report,
                Optional.of(NightPrices.of(project, built).forSearch()));
        kept.earlier().forEach(nearby::offer);
        PlanningRequest asNewRequest = resumed(request, kept.earlier().isEmpty(), nearby);
        PlannerSource.Search anew = planners.search(
                asNewRequest.withBudget(request.budget().part(AS_NEW_PART)), watch::report, watch.notes());
        control.cancellation().whenCancelled(() -> {
            anew.stop();
            nearby.stop();
        });
        PlanningOutcome asNew;
        try (CheckpointWriter<KeptRework> keeper = kept.keeping(() -> soFar(nearby, anew))) {
            watch.at(Stage.SEARCHING);
            asNew = anew.plan();
            nearby.offer(asNew.plan());
            if (!control.cancellation().isCancelled()) {
                nearby.search(request.budget().part(1 - AS_NEW_PART), request.threads());
            }
            keeper.keep();
        }
        watch.at(Stage.BOUNDS);
        Optional<Bounds> bounds = Optional.of(ProvenBounds.of(project));
        int leastMoves = leastMoves(request, plant);
        watch.at(Stage.JUDGING);
        Front whole = Front.of(
                        plant,
                        nearby.plans().stream()
                                .map(NearbyPlan::plan)
                                .filter(plan -> Kept.isReached(project, built, plan, asked.keepsRunning(), night))
                                .toList())
                .atLeast(leastMoves);
        FrontPoint picked = whole.choose(asked.perMoveAmps(), asked.maxMoves());
        return finished(sha256, request, asNew, bounds, whole.thinned(MOST_POINTS, picked), picked);
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

    /** Goes on from the best that was kept, unless every plan is held against the one as built. */
    private static PlanningRequest resumed(PlanningRequest request, boolean isNew, NearbySearch nearby) {
        List<NearbyPlan> plans = nearby.plans();
        return isNew || request.keepsFrom()
                ? request
                : request.withFrom(plans.get(plans.size() - 1).plan()).improving();
    }

    /** An interrupt leaves no time for it. */
    private int leastMoves(PlanningRequest request, BuiltPlant plant) {
        return control.cancellation().isCancelled() ? 0 : Proofs.leastMoves(request, plant.staying());
    }

    private static List<Plan> soFar(NearbySearch nearby, PlannerSource.Search anew) {
        List<Plan> plans = new ArrayList<>(
                nearby.plansSoFar().stream().map(NearbyPlan::plan).toList());
        anew.best().ifPresent(plans::add);
        return plans;
    }
}
