package evenrise.solver.cli;

import evenrise.model.file.Reading;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.report.ReworkText;
import evenrise.solver.report.Sanitizer;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.Kept;
import evenrise.solver.rework.OrderOfWork;
import evenrise.solver.rework.WorkOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/** One rework from request to written folder. */
final class ReworkRun {
    /** Part of the time for a plan as good as new; the rest goes to plans near the one as built. */
    private static final double AS_NEW_PART = 0.4;

    private static final int MOST_POINTS = 12;
    private static final int[] OTHER_SIZES = {2, 4, 8, 16};

    private final Terminal terminal;
    private final PlannerSource planners;
    private final Interruption interruption;
    private final boolean isQuiet;

    ReworkRun(Terminal terminal, PlannerSource planners, Interruption interruption, boolean isQuiet) {
        this.terminal = terminal;
        this.planners = planners;
        this.interruption = interruption;
        this.isQuiet = isQuiet;
    }

    /** @return the exit code */
    int run(
            Reading<Project> read,
            PlanningRequest request,
            ReworkOptions options,
            List<String> notes,
            ReworkFolder folder) {
        Project project = request.project();
        Plan built = request.from().orElseThrow();
        Project searched = options.keepsRunning() ? Kept.early(project, built) : project;
        NearbySearch nearby = new NearbySearch(searched, built, request.seed());
        PlanningOutcome asNew = asNew(request, nearby::stop);
        nearby.offer(asNew.plan());
        if (!interruption.happened()) {
            nearby.search(part(request.budget(), 1 - AS_NEW_PART));
        }
        Optional<Bounds> bounds = Optional.of(Planned.usualBounds(project));
        Front whole = Front.of(
                project,
                built,
                nearby.plans().stream()
                        .map(NearbyPlan::plan)
                        .filter(plan -> !options.keepsRunning() || Kept.keepsRunning(project, built, plan))
                        .toList());
        FrontPoint picked = whole.choose(options.perMoveAmps(), options.maxMoves());
        Front front = whole.thinned(MOST_POINTS, picked)
                .finished(plan ->
                        Planned.evaluated(read, request, asNew, plan, bounds).plan());
        FrontPoint chosen = front.at(picked.moves());
        OrderOfWork work = new OrderOfWork(project, built, chosen.plan());
        WorkOrder order = work.withAtLeast(options.deadAtOnce());
        folder.write(project, built, front, chosen, order);
        if (!isQuiet) {
            List<WorkOrder> others = others(work, order);
            terminal.print(
                    terminal.out(),
                    ReworkText.lines(project, notes, front, chosen, order, others, terminal.outPaint()));
            terminal.print(
                    terminal.out(),
                    List.of(
                            "",
                            "Written to folder " + Sanitizer.clean(folder.path().toString()) + "."));
        }
        return exitCode(chosen, order);
    }

    private int exitCode(FrontPoint chosen, WorkOrder order) {
        if (interruption.happened()) {
            return ExitCode.INTERRUPTED;
        }
        if (chosen.violations() > 0) {
            ShowsFailures.message(
                    terminal.err(),
                    "the plan chosen breaks hard rules in " + chosen.violations() + " places; audit it to see where.");
        }
        if (!order.breaches().isEmpty()) {
            ShowsFailures.message(terminal.err(), "no order of work was found that breaks nothing on the way.");
        }
        if (chosen.violations() > 0 || !order.breaches().isEmpty()) {
            return ExitCode.RULES_BROKEN;
        }
        return chosen.plan()
                .assessment()
                .map(assessment -> ExitCode.of(assessment, false))
                .orElse(ExitCode.DONE);
    }

    private PlanningOutcome asNew(PlanningRequest request, Runnable alsoStops) {
        PlanningRequest part = new PlanningRequest(
                request.project(),
                request.from(),
                part(request.budget(), AS_NEW_PART),
                request.seed(),
                request.threads());
        Queue<String> notes = new ConcurrentLinkedQueue<>();
        try (Watch watch = new Watch(ProgressView.of(terminal, isQuiet))) {
            PlannerSource.Search search = planners.search(part, watch::report, notes::add);
            interruption.stopsWith(() -> {
                search.stop();
                alsoStops.run();
            });
            return search.plan();
        } finally {
            notes.forEach(each -> ShowsFailures.message(terminal.err(), each));
        }
    }

    /** Moves are each search's own; time is shared. */
    private static Budget part(Budget budget, double part) {
        return budget instanceof Budget.Time time
                ? new Budget.Time(
                        java.time.Duration.ofMillis(Math.round(time.limit().toMillis() * part)))
                : budget;
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
