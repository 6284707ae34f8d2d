package evenrise.solver.exact;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import java.util.function.ToDoubleFunction;

/** Bounds the peak of projects of a few panels by {@link PhaseLadder}. */
public final class PhaseProver {
    /** Of larger projects it proves next to nothing more than arguments on the mean of the phases do. */
    public static final int MOST_LOADS = 150;

    private static final double MOST_SECONDS = 10;
    private static final double PART_OF_THE_TIME = 0.1;

    /** With deviations the program is harder, but small projects need less of a search. */
    private static final double PART_WITH_DEVIATIONS = 0.25;

    /** With counted moves, so much of the solver's own measure of work a move, within bounds. */
    private static final double WORK_A_MOVE = 1.0 / 50_000;

    private static final double MOST_WORK = 10;

    private CpSolver solver;
    private boolean stopped;

    /** Whether it proves anything of such a project; loads nothing native. */
    public static boolean suits(Project project) {
        return project.loads().size() <= MOST_LOADS
                && project.supply().system().phases().size() > 1
                && project.objective().peakInrush() > 0
                && project.loads().stream().anyMatch(Load::switched);
    }

    /**
     * What the peak of no plan that keeps every rule stays below, in amperes; 0 where nothing is proven.
     *
     * @param budget of the search: the part of it that is used here is small
     * @param workers threads, where the budget is a time
     */
    public double peakAmps(Project project, Budget budget, long seed, int workers) {
        return prove(project, PhaseLadder::minimizePeak, effort(budget, PART_OF_THE_TIME, seed, workers));
    }

    /**
     * What peak and deviations, by their weights in the objective, stay below in no plan that keeps every rule, in
     * ampere-equivalents; 0 where nothing is proven.
     *
     * @param leastPeakAmps what the peak is known not to stay below
     */
    public double peakAndDeviationsAmps(Project project, double leastPeakAmps, Budget budget, long seed, int workers) {
        return prove(
                project,
                ladder -> ladder.minimizePeakAndDeviations(leastPeakAmps),
                effort(budget, PART_WITH_DEVIATIONS, seed, workers));
    }

    private double prove(Project project, ToDoubleFunction<PhaseLadder> aim, ExactEffort effort) {
        try {
            PhaseLadder ladder = new PhaseLadder(project, ProvenBounds.tellsRolesApart(project));
            double unitAmps = aim.applyAsDouble(ladder);
            CpSolver begun = begin();
            if (begun == null || effort.isUp()) {
                return 0;
            }
            effort.limit(begun.getParameters());
            CpSolverStatus status = begun.solve(ladder.model());
            boolean isBounded = status == CpSolverStatus.OPTIMAL
                    || status == CpSolverStatus.FEASIBLE
                    || status == CpSolverStatus.UNKNOWN;
            double amps = isBounded ? begun.bestObjectiveBound() * unitAmps : 0;
            return Math.max(0, amps - amps * 1e-9); // the solver says it in floating point
        } catch (Unfit e) {
            return 0;
        }
    }

    private static ExactEffort effort(Budget budget, double part, long seed, int workers) {
        if (budget instanceof Budget.Time time) {
            double seconds = part * time.limit().toMillis() / 1000.0;
            return ExactEffort.seconds(Math.min(MOST_SECONDS, seconds), workers, seed);
        }
        return ExactEffort.work(Math.min(MOST_WORK, ((Budget.Moves) budget).limit() * WORK_A_MOVE), seed);
    }

    private synchronized CpSolver begin() {
        if (stopped) {
            return null;
        }
        solver = new CpSolver();
        return solver;
    }

    /** Ends the work soon; may be called from any thread. */
    public synchronized void stop() {
        stopped = true;
        if (solver != null) {
            solver.stopSearch();
        }
    }
}
