package evenrise.solver.exact;

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

    /** Projects that no exact model follows have more of the time, of one worker, who raises the bound of a tree. */
    private static final double PART_WHERE_NOTHING_FOLLOWS = 0.3;

    private static final double MOST_SECONDS_THEN = 30;

    private final ProgramBound bound = new ProgramBound();
    private final ProgramBound byTree = new ProgramBound(true);

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
     * @param leastPeakAmps what it is known not to stay below
     * @param budget of the search: the part of it that is used here is small
     * @param workers threads, where the budget is a time
     */
    public double peakAmps(Project project, double leastPeakAmps, Budget budget, long seed, int workers) {
        boolean isFollowed = ExactProver.isSmall(project);
        return prove(
                project,
                ladder -> ladder.minimizePeak(leastPeakAmps),
                isFollowed ? bound : byTree,
                isFollowed
                        ? effort(budget, PART_OF_THE_TIME, seed, workers)
                        : ExactEffort.beside(budget, PART_WHERE_NOTHING_FOLLOWS, MOST_SECONDS_THEN, seed, 1));
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
                bound,
                effort(budget, PART_WITH_DEVIATIONS, seed, workers));
    }

    private static double prove(
            Project project, ToDoubleFunction<PhaseLadder> aim, ProgramBound bound, ExactEffort effort) {
        return bound.amps(
                () -> {
                    PhaseLadder ladder = new PhaseLadder(project, ProvenBounds.tellsRolesApart(project));
                    return new ProgramBound.Made(ladder.model(), aim.applyAsDouble(ladder));
                },
                effort);
    }

    private static ExactEffort effort(Budget budget, double part, long seed, int workers) {
        return ExactEffort.beside(budget, part, MOST_SECONDS, seed, workers);
    }

    /** Ends the work soon; may be called from any thread. */
    public void stop() {
        bound.stop();
        byTree.stop();
    }
}
