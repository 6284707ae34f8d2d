package evenrise.solver.compare;

import evenrise.model.project.ObjectiveWeights;
import java.util.Locale;

/** What a scenario's plan is to be good at. */
public enum Aim {
    /** The project's own objective. */
    USUAL,
    /** A low peak, whatever the time. */
    LOW_PEAK,
    /** A short sequence, whatever the peak. */
    QUICK;

    /** As files and tables call it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    ObjectiveWeights weights(ObjectiveWeights own) {
        return switch (this) {
            case USUAL -> own;
            case LOW_PEAK ->
                ObjectiveWeights.builder()
                        .peakInrush(Math.max(1, own.peakInrush()))
                        .supplyImbalance(0.2 * own.supplyImbalance())
                        .panelImbalance(0.2 * own.panelImbalance())
                        .duration(0)
                        .boards(0)
                        .build();
            case QUICK ->
                ObjectiveWeights.builder()
                        .peakInrush(0.1 * own.peakInrush())
                        .supplyImbalance(0.1 * own.supplyImbalance())
                        .panelImbalance(0.1 * own.panelImbalance())
                        .duration(20)
                        .boards(0)
                        .build();
        };
    }
}
