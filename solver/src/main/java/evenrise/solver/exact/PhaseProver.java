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

    private final ProgramBound bound = new ProgramBound();

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
    }
}
