package evenrise.solver.exact;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.bounds.SettingGrid;
import evenrise.solver.engine.Budget;

/** Bounds peaks, deviations and racks of plants with feeder trees, systems and scenes by {@link DistributionLadder}. */
final class DistributionProver {
    /** Of larger plants the solver proves little in the time that it has. */
    private static final int MOST_LOADS = 400;

    private static final double MOST_SECONDS = 30;
    private static final double PART_OF_THE_TIME = 0.3;

    /** With counted moves, so much of the solver's own measure of work a move, within bounds. */
    private static final double WORK_A_MOVE = 1.0 / 50_000;

    private static final double MOST_WORK = 10;

    private CpSolver solver;
    private boolean stopped;

    /** Whether it proves anything of such a project; loads nothing native. */
    static boolean suits(Project project) {
        return project.loads().size() <= MOST_LOADS && project.loads().stream().anyMatch(Load::switched);
    }

    /**
     * What peaks, deviations and racks by their weights stay below in no plan that keeps every rule, in ampere-equivalents;
     * 0 where nothing is proven.
     */
    double amps(Project project, Budget budget, long seed, int workers) {
        try {
            DistributionLadder ladder = new DistributionLadder(project, SettingGrid.tellsTimesApart(project));
            double unitAmps = ladder.minimize();
            ExactEffort effort = effort(budget, seed, workers);
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

    private static ExactEffort effort(Budget budget, long seed, int workers) {
        if (budget instanceof Budget.Time time) {
            double seconds = PART_OF_THE_TIME * time.limit().toMillis() / 1000.0;
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
    synchronized void stop() {
        stopped = true;
        if (solver != null) {
            solver.stopSearch();
        }
    }
}
