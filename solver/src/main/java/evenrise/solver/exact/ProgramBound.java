package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;

/** What the solver proves that an integer program's aim does not stay below, solved or not; may be stopped from any thread. */
final class ProgramBound {
    /** The solver says its bound in floating point. */
    private static final double ROUNDING = 1e-9;

    /** A program without a solution yet, that can be made. */
    @FunctionalInterface
    interface Making {
        /** Gives it its aim; one unit of that in ampere-equivalents. */
        Made make();
    }

    /** @param unitAmps one unit of its aim, in ampere-equivalents */
    record Made(CpModel model, double unitAmps) {}

    private final boolean byTree;
    private CpSolver solver;
    private boolean stopped;

    ProgramBound() {
        this(false);
    }

    /** @param byTree whether the solver raises the least bound of a tree of its own, where it would look for solutions first */
    ProgramBound(boolean byTree) {
        this.byTree = byTree;
    }

    /** In ampere-equivalents; 0 where nothing is proven, or where the project does not fit the program. */
    double amps(Making making, ExactEffort effort) {
        try {
            Made made = making.make();
            CpSolver begun = begin();
            if (begun == null || effort.isUp()) {
                return 0;
            }
            effort.limit(begun.getParameters());
            if (byTree) {
                begun.getParameters().setOptimizeWithLbTreeSearch(true).setLinearizationLevel(2);
            }
            CpSolverStatus status = begun.solve(made.model());
            boolean isBounded = status == CpSolverStatus.OPTIMAL
                    || status == CpSolverStatus.FEASIBLE
                    || status == CpSolverStatus.UNKNOWN;
            double amps = isBounded ? begun.bestObjectiveBound() * made.unitAmps() : 0;
            return Math.max(0, amps - amps * ROUNDING);
        } catch (Unfit e) {
            return 0;
        }
    }

    private synchronized CpSolver begin() {
        if (stopped) {
            return null;
        }
        solver = new CpSolver();
        return solver;
    }

    /** Ends the work soon, also before it has begun. */
    synchronized void stop() {
        stopped = true;
        if (solver != null) {
            solver.stopSearch();
        }
    }
}
