package evenrise.model.rules;

import evenrise.model.project.ObjectiveWeights;

/** What a plan is asked to make small, in ampere-equivalents: each figure by its weight, summed. */
public final class Objective {
    private Objective() {}

    /**
     * The weighted sum.
     *
     * @param peakInrushAmps of the supply's worst phase
     * @param supplyDeviationAmps largest deviation of a phase from the mean at the supply
     * @param panelDeviationsAmps the same of every panel, summed
     * @param durationSeconds last switch-on
     * @param boardsUsed boards that switch at least one load
     */
    public static double of(
            ObjectiveWeights weights,
            double peakInrushAmps,
            double supplyDeviationAmps,
            double panelDeviationsAmps,
            double durationSeconds,
            int boardsUsed) {
        return weights.peakInrush() * peakInrushAmps
                + weights.supplyImbalance() * supplyDeviationAmps
                + weights.panelImbalance() * panelDeviationsAmps
                + weights.duration() * durationSeconds
                + weights.boards() * boardsUsed;
    }
}
