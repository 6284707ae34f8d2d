package evenrise.solver.exact;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.bounds.SettingGrid;
import evenrise.solver.engine.Budget;

/** Bounds peaks, deviations and racks of plants with feeder trees, systems and scenes by {@link DistributionLadder}. */
final class DistributionProver {
    /** Of larger plants the solver proves little in the time that it has. */
    private static final int MOST_LOADS = 400;

    private static final double MOST_SECONDS = 30;
    private static final double PART_OF_THE_TIME = 0.3;

    /** One: the tree that raises the bound is searched by one. */
    private static final int WORKERS = 1;

    private final ProgramBound bound = new ProgramBound(true);

    /** Whether it proves anything of such a project; loads nothing native. */
    static boolean suits(Project project) {
        return project.loads().size() <= MOST_LOADS && project.loads().stream().anyMatch(Load::switched);
    }

    /**
     * What peaks, deviations and racks by their weights stay below in no plan that keeps every rule, in ampere-equivalents;
     * 0 where nothing is proven.
     */
    double amps(Project project, Budget budget, long seed) {
        return bound.amps(
                () -> {
                    DistributionLadder ladder = new DistributionLadder(project, SettingGrid.tellsTimesApart(project));
                    return new ProgramBound.Made(ladder.model(), ladder.minimize(ProvenBounds.fewestBoards(project)));
                },
                ExactEffort.beside(budget, PART_OF_THE_TIME, MOST_SECONDS, seed, WORKERS));
    }

    /** Ends the work soon; may be called from any thread. */
    void stop() {
        bound.stop();
    }
}
