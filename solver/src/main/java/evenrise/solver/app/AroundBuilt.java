package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.rework.KeptRework;
import evenrise.solver.rework.NightPrices;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A search for a plan as good as new, and then one around the plan as built that knows of it. */
final class AroundBuilt {
    /** Part of the time for a plan as good as new; the rest goes to plans near the one as built. */
    private static final double AS_NEW_PART = 0.4;

    private final PlannerSource planners;
    private final Watch watch;
    private final Cancellation cancellation;

    /**
     * What was found.
     *
     * @param asNew without regard to the plan as built
     * @param plans by rising moves, then by rising cost; the first is the plan as built
     */
    record Found(PlanningOutcome asNew, List<Plan> plans, long moves) {}

    AroundBuilt(PlannerSource planners, Watch watch, Cancellation cancellation) {
        this.planners = planners;
        this.watch = watch;
        this.cancellation = cancellation;
    }

    /**
     * @param request for the plan as good as new
     * @param held the project with everything fixed that is not to be moved
     * @param built the plan as built, without what goes
     * @param kept what is kept on the way, and gone on from
     */
    Found search(PlanningRequest request, Project held, Plan built, Optional<ReworkCheckpoint> kept) {
        NearbySearch nearby = new NearbySearch(
                held,
                built,
                request.seed(),
                watch::report,
                Optional.of(NightPrices.of(request.project(), built).forSearch()));
        List<Plan> earlier = kept.map(ReworkCheckpoint::earlier).orElse(List.of());
        earlier.forEach(nearby::offer);
        PlanningRequest anewRequest = resumed(request, earlier.isEmpty(), nearby);
        PlannerSource.Search anew = planners.search(
                anewRequest.withBudget(request.budget().part(AS_NEW_PART)), watch::report, watch.notes());
        cancellation.whenCancelled(() -> {
            anew.stop();
            nearby.stop();
        });
        PlanningOutcome asNew;
        if (kept.isEmpty()) {
            asNew = search(request, anew, nearby);
        } else {
            try (CheckpointWriter<KeptRework> keeper = kept.get().keeping(() -> soFar(nearby, anew))) {
                asNew = search(request, anew, nearby);
                keeper.keep();
            }
        }
        return new Found(asNew, nearby.plans().stream().map(NearbyPlan::plan).toList(), asNew.moves() + nearby.tried());
    }

    private PlanningOutcome search(PlanningRequest request, PlannerSource.Search anew, NearbySearch nearby) {
        watch.at(Stage.SEARCHING);
        PlanningOutcome asNew = anew.plan();
        nearby.offer(asNew.plan());
        if (!cancellation.isCancelled()) {
            nearby.search(request.budget().part(1 - AS_NEW_PART), request.threads());
        }
        return asNew;
    }

    /** Goes on from the best that was kept, unless every plan is held against the one as built. */
    private static PlanningRequest resumed(PlanningRequest request, boolean isNew, NearbySearch nearby) {
        List<NearbyPlan> plans = nearby.plans();
        return isNew || request.keepsFrom()
                ? request
                : request.withFrom(plans.get(plans.size() - 1).plan()).improving();
    }

    private static List<Plan> soFar(NearbySearch nearby, PlannerSource.Search anew) {
        List<Plan> plans = new ArrayList<>(
                nearby.plansSoFar().stream().map(NearbyPlan::plan).toList());
        anew.best().ifPresent(plans::add);
        return plans;
    }
}
