package evenrise.solver.compare;

import evenrise.model.project.ObjectiveWeights;

/** What a scenario's plan is to be good at. */
public enum Aim {
    /** The project's own objective. */
    USUAL,
    /** A low peak, whatever the time. */
    LOW_PEAK,
    /** A short sequence, whatever the peak. */
    QUICK;

    ObjectiveWeights weights(ObjectiveWeights own) {
        return switch (this) {
            case USUAL -> own;
            case LOW_PEAK ->
                new ObjectiveWeights(
                        Math.max(1, own.peakInrush()), 0.2 * own.supplyImbalance(), 0.2 * own.panelImbalance(), 0, 0);
            case QUICK ->
                new ObjectiveWeights(
                        0.1 * own.peakInrush(), 0.1 * own.supplyImbalance(), 0.1 * own.panelImbalance(), 20, 0);
        };
    }
}
