package evenrise.solver.exact;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.search.Plans;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicReference;

/** The exact model, asked in the ways that tests ask it. */
final class Exact {
    private static final double SECONDS = 120;

    private Exact() {}

    /**
     * A best plan.
     *
     * @param plan one that the referee finds no fault with
     * @param atLeastAmps no plan that keeps every rule has a smaller objective
     * @param uncutAmps the same without what is cut in when broken, the neutral above all
     */
    record Optimum(Plan plan, double atLeastAmps, double uncutAmps) {}

    /** The least objective of all plans that keep every rule; fails where there is none. */
    static Optimum solve(Project project) {
        ExactModel model = new ExactModel(project, true);
        model.minimize(ExactKnown.peak(0));
        CpSolver uncut = new CpSolver();
        uncut.getParameters().setMaxTimeInSeconds(SECONDS).setNumWorkers(4);
        CpSolverStatus status = uncut.solve(model.model());
        if (status != CpSolverStatus.OPTIMAL) {
            throw new IllegalStateException(project.name() + ": " + status + " instead of a proven optimum");
        }
        AtomicReference<Plan> best = new AtomicReference<>();
        AtomicReference<Double> bound = new AtomicReference<>(0.0);
        ExactSearch search =
                new ExactSearch(project, model, true, ExactEffort.seconds(SECONDS, 4, 1), bound::set, best::set);
        ExactSearch.End end = search.run();
        if (end != ExactSearch.End.SOLVED) {
            throw new IllegalStateException(project.name() + ": " + end + " instead of a proven optimum");
        }
        return new Optimum(Plans.finished(project, best.get()), bound.get(), uncut.objectiveValue() * model.unitAmps());
    }

    /** Some plan that keeps every rule, the same every time: one worker, no objective. */
    static Plan anyPlan(Project project) {
        AtomicReference<Plan> found = new AtomicReference<>();
        ExactSearch search = new ExactSearch(
                project, new ExactModel(project, true), true, ExactEffort.work(SECONDS, 1), bound -> {}, found::set);
        search.run();
        return Plans.finished(project, found.get());
    }

    /** What the model says that {@code plan} costs; empty where it finds a rule broken. */
    static OptionalDouble objectiveOf(Project project, Plan plan) {
        ExactModel model = new ExactModel(project, true);
        model.minimize(ExactKnown.peak(0));
        model.fix(plan);
        model.cutNeutral(plan, Referee.judge(project, plan));
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1);
        return solver.solve(model.model()) == CpSolverStatus.OPTIMAL
                ? OptionalDouble.of(solver.objectiveValue() * model.unitAmps())
                : OptionalDouble.empty();
    }
}
