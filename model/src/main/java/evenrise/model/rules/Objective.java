package evenrise.model.rules;

import evenrise.model.plan.Metrics;
import evenrise.model.project.ObjectiveWeights;

/** What a plan is asked to make small, in ampere-equivalents: each figure by its weight, summed. */
public final class Objective {
    private Objective() {}

    /**
     * What further parts of a plant add: imbalance of nodes, spread racks and moves.
     *
     * @param nodeDeviationsAmps largest deviations of nodes that are neither sources nor panels, summed
     */
    static double further(ObjectiveWeights weights, double nodeDeviationsAmps, Metrics metrics) {
        return weights.nodeImbalance() * nodeDeviationsAmps
                + weights.rackPanels() * metrics.rackPanels().orElse(0)
                + weights.rackBoards() * metrics.rackBoards().orElse(0)
                + weights.rackRows() * metrics.rackRows().orElse(0)
                + weights.move()
                        * (metrics.movedBreakers().orElse(0)
                                + metrics.movedLeads().orElse(0)
                                + metrics.movedSettings().orElse(0));
    }

    /**
     * The weighted sum.
     *
     * @param peakInrushAmps of the supply's worst phase, and of each further source's
     * @param supplyDeviationAmps largest deviation of a phase from the mean at the supply, and at each further source
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
