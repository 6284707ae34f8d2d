package evenrise.solver.exact;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;

/** Bounds the peak of projects of a few panels by {@link PhaseLadder}. */
public final class PhaseProver {
    /** Of larger projects it proves next to nothing more than arguments on the mean of the phases do. */
    public static final int MOST_LOADS = 150;

    private static final double MOST_SECONDS = 10;
    private static final double PART_OF_THE_TIME = 0.1;

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
        try {
            PhaseLadder ladder = new PhaseLadder(project, ProvenBounds.tellsRolesApart(project));
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
            return isBounded ? amps(begun.bestObjectiveBound()) : 0;
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

    /** A hair less than the solver says, in floating point. */
    private static double amps(double units) {
        double amps = units / ExactModelUnits.PER_AMP;
        return Math.max(0, amps - amps * 1e-9);
    }

    private synchronized CpSolver begin() {
        if (!stopped) {
            solver = new CpSolver();
        }
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
