package evenrise.solver.exact;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.Literal;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.Predicate;

/**
 * One run of the solver on an exact model, cut and repeated as often as it ends at a plan that breaks a rule which the
 * model leaves to cuts.
 */
final class ExactSearch {
    /** Models of more variables are not prepared at length, which would use up their time. */
    private static final int LARGE = 20_000;

    /** A linear relaxation takes most of the time here, and says next to nothing of times and phases. */
    private static final int NO_RELAXATION = 0;

    /** What a run ended with. */
    enum End {
        /** Nothing is left to prove. */
        SOLVED,
        NO_PLAN,
        /** Time was up. */
        OPEN
    }

    private final Project project;
    private final ExactModel model;
    private final boolean withBoards;
    private final ExactEffort effort;
    private final DoubleConsumer boundFound;
    private final Consumer<Plan> planFound;
    private volatile CpSolver solver = new CpSolver();
    private volatile boolean stopped;

    /**
     * @param boundFound told of each better bound on the objective, in ampere-equivalents; from any thread
     * @param planFound told of plans that keep every rule, timed; from any thread
     */
    ExactSearch(
            Project project,
            ExactModel model,
            boolean withBoards,
            ExactEffort effort,
            DoubleConsumer boundFound,
            Consumer<Plan> planFound) {
        this.project = project;
        this.model = model;
        this.withBoards = withBoards;
        this.effort = effort;
        this.boundFound = boundFound;
        this.planFound = planFound;
    }

    End run() {
        while (!stopped) {
            effort.limit(solver.getParameters());
            solver.getParameters().setLinearizationLevel(NO_RELAXATION);
            if (model.model().getBuilder().getVariablesCount() > LARGE) {
                solver.getParameters()
                        .setCpModelProbingLevel(0)
                        .setSymmetryLevel(0)
                        .setMaxPresolveIterations(1);
            }
            if (effort.isUp()) {
                return End.OPEN;
            }
            CpSolverStatus status = solver.solve(model.model(), new CpSolverSolutionCallback() {
                @Override
                public void onSolutionCallback() {
                    tellBound(bestObjectiveBound());
                    if (withBoards) {
                        offer(model.plan(this::booleanValue));
                    }
                }
            });
            effort.used(solver.response().getDeterministicTime());
            if (status == CpSolverStatus.UNKNOWN) {
                tellBound(solver.bestObjectiveBound());
            }
            if (status == CpSolverStatus.INFEASIBLE) {
                return End.NO_PLAN;
            }
            if (status == CpSolverStatus.MODEL_INVALID) {
                throw new Unfit(solver.response().getSolutionInfo());
            }
            boolean isSolved = status == CpSolverStatus.OPTIMAL;
            if (isSolved || status == CpSolverStatus.FEASIBLE) {
                tellBound(solver.bestObjectiveBound());
                if (!withBoards) {
                    return isSolved ? End.SOLVED : End.OPEN;
                }
                Predicate<Literal> holds = solver::booleanValue;
                Plan plan = PlanFinisher.timed(project, model.plan(holds));
                Verdict verdict = Referee.judge(project, plan);
                if (!model.cut(plan, verdict, holds)) {
                    return isSolved ? End.SOLVED : End.OPEN;
                }
            } else {
                return End.OPEN;
            }
            solver = new CpSolver();
        }
        return End.OPEN;
    }

    void stop() {
        stopped = true;
        solver.stopSearch();
    }

    /** A bound of the model, a hair less, since the solver gives it in floating point. */
    private void tellBound(double units) {
        double amps = units * model.unitAmps();
        boundFound.accept(amps - Math.abs(amps) * 1e-9);
    }

    private void offer(Plan bare) {
        Plan plan = PlanFinisher.timed(project, bare);
        if (Referee.judge(project, plan).violations().isEmpty()) {
            planFound.accept(plan);
        }
    }
}
