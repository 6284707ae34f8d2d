package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Rotation;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.Kept;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.NightPrices;
import evenrise.solver.rework.OrderOfWork;
import evenrise.solver.rework.WorkOrder;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One rework from request to written folder. */
final class ReworkJob {
    /** Part of the time for a plan as good as new; the rest goes to plans near the one as built. */
    private static final double AS_NEW_PART = 0.4;

    private static final int MOST_POINTS = 12;
    private static final int[] OTHER_SIZES = {2, 4, 8, 16};

    private final PlannerSource planners;
    private final ReworkRequest asked;
    private final JobControl control;
    private final Watch watch;

    ReworkJob(PlannerSource planners, ReworkRequest asked, JobControl control, Watch watch) {
        this.planners = planners;
        this.asked = asked;
        this.control = control;
        this.watch = watch;
    }

    ReworkResult run() {
        Reading<Project> read = Inputs.project(asked.project(), watch.notes());
        Project subject = read.value().orElseThrow();
        Reading<Plan> asBuilt = Inputs.plan(asked.plan(), subject, watch.notes());
        KeptNotes.sayLeftBehind(asked.plan().name(), asBuilt.notes(), watch.notes());
        Plan built = asBuilt.value().orElseThrow();
        Optional<Measured> readings = asked.measured().map(file -> Readings.of(file, subject, built));
        ReworkFolder folder = ReworkFolder.of(asked.folder(), inputs());
        List<String> notes = new ArrayList<>();
        if (readings.isPresent()) {
            notes.add(
                    readings.get().currents().size() + " of " + subject.loads().size()
                            + " loads have measured currents; the project with them is " + ReworkFolder.MEASURED + ".");
            notes.addAll(readings.get().notes());
            read = Inputs.sound(
                    ReworkFolder.MEASURED,
                    ProjectFile.read(folder.measured(readings.get().in(subject), read.notes()), ReworkFolder.MEASURED));
        }
        Inputs.findings(read)
                .forEach(finding -> watch.notes().accept(asked.project().name() + ": " + finding));
        Effort effort = asked.effort();
        PlanningRequest request = new PlanningRequest(
                Rotation.asBuilt(read.value().orElseThrow(), built),
                Optional.of(built),
                effort.budget(),
                effort.seed(),
                effort.searches());
        return run(read.sha256(), request, notes, folder);
    }

    private List<Source> inputs() {
        List<Source> inputs = new ArrayList<>(List.of(asked.project(), asked.plan()));
        asked.measured().map(Source::file).ifPresent(inputs::add);
        return inputs;
    }

    private ReworkResult run(String sha256, PlanningRequest request, List<String> notes, ReworkFolder folder) {
        Project project = request.project();
        Plan built = request.from().orElseThrow();
        Project searched = asked.keepsRunning() ? Kept.early(project, built) : project;
        NearbySearch nearby = new NearbySearch(
                searched,
                built,
                request.seed(),
                watch::report,
                Optional.of(NightPrices.of(project, built).forSearch()));
        PlanningOutcome asNew = asNew(request, nearby::stop);
        nearby.offer(asNew.plan());
        if (!control.cancellation().isCancelled()) {
            nearby.search(request.budget().part(1 - AS_NEW_PART), request.threads());
        }
        watch.at(Stage.BOUNDS);
        Optional<Bounds> bounds = Optional.of(ProvenBounds.of(project));
        watch.at(Stage.JUDGING);
        Front whole = Front.of(
                project,
                built,
                nearby.plans().stream()
                        .map(NearbyPlan::plan)
                        .filter(plan -> !asked.keepsRunning() || Kept.keepsRunning(project, built, plan))
                        .toList());
        FrontPoint picked = whole.choose(asked.perMoveAmps(), asked.maxMoves());
        Map<Plan, Evaluation> evaluations = new IdentityHashMap<>();
        Front front = whole.thinned(MOST_POINTS, picked).finished(bare -> {
            Evaluation evaluation = Finishing.evaluated(sha256, request, asNew, bare, bounds);
            Plan plan = evaluation.plan();
            evaluations.put(plan, evaluation);
            return plan;
        });
        FrontPoint chosen = front.like(picked);
        watch.at(Stage.ORDERING);
        OrderOfWork work = new OrderOfWork(project, built, chosen.plan());
        WorkOrder order = work.withAtLeast(asked.deadAtOnce());
        watch.at(Stage.WRITING);
        folder.write(project, built, front, chosen, order);
        watch.at(Stage.ORDERING);
        List<WorkOrder> others = others(work, order);
        return new ReworkResult(
                project,
                notes,
                front,
                chosen,
                evaluations.get(chosen.plan()),
                order,
                others,
                control.cancellation().isCancelled());
    }

    private PlanningOutcome asNew(PlanningRequest request, Runnable alsoStops) {
        PlanningRequest part = request.withBudget(request.budget().part(AS_NEW_PART));
        PlannerSource.Search search = planners.search(part, watch::report, watch.notes());
        control.cancellation().whenCancelled(() -> {
            search.stop();
            alsoStops.run();
        });
        watch.at(Stage.SEARCHING);
        return search.plan();
    }

    private static List<WorkOrder> others(OrderOfWork work, WorkOrder order) {
        List<WorkOrder> others = new ArrayList<>();
        WorkOrder last = order;
        for (int size : OTHER_SIZES) {
            if (size > last.cost().mostLockedOut() && last.stages().size() > 1) {
                WorkOrder next = work.withAtLeast(size);
                if (next.cost().outages() < last.cost().outages()
                        || next.cost().stages() < last.cost().stages()) {
                    others.add(next);
                    last = next;
                }
            }
        }
        return others;
    }
}
