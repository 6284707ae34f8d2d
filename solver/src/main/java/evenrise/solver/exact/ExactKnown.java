package evenrise.solver.exact;

import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;

/**
 * What is proven of the parts of a project's objective before the exact model begins. No plan that keeps every rule stays
 * below any of it.
 *
 * @param peakAmps the peak, in amperes
 * @param peakAndDeviationsAmps peak and deviations by their weights, in ampere-equivalents
 * @param durationAndBoardsAmps duration and boards by their weights, likewise
 */
record ExactKnown(double peakAmps, double peakAndDeviationsAmps, double durationAndBoardsAmps) {
    /** Far more than floating point can be off by. */
    private static final double MARGIN_AMPS = 1e-6;

    /** Nothing but the peak. */
    static ExactKnown peak(double amps) {
        return new ExactKnown(amps, 0, 0);
    }

    /** Whether something is proven of currents with deviations, and of times with boards. */
    boolean ofBothShares() {
        return peakAndDeviationsAmps > 0 && durationAndBoardsAmps > 0;
    }

    /** What the whole objective does not stay below. */
    double objectiveAmps() {
        return peakAndDeviationsAmps + durationAndBoardsAmps;
    }

    /** How long a plan may take at most that costs no more than {@code objectiveAmps}; infinite where time costs nothing. */
    double mostSeconds(Project project, double objectiveAmps) {
        ObjectiveWeights weights = project.objective();
        double rest = Math.max(peakAndDeviationsAmps, weights.peakInrush() * peakAmps)
                + weights.boards() * ProvenBounds.fewestBoards(project);
        return weights.duration() > 0
                ? Math.max(0, objectiveAmps - rest + MARGIN_AMPS) / weights.duration()
                : Double.POSITIVE_INFINITY;
    }
}
