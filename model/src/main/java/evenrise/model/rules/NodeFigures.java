package evenrise.model.rules;

import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;

/**
 * The electrical figures of the supply, of one panel or of one further node. Where the project has scenes, each is that of the
 * worst, but for the deviation.
 *
 * @param node the panel's or node's id, or {@link #SUPPLY}
 * @param runningAmps rms running current of each phase, the sum of the loads' magnitudes: what rules and metrics go by;
 *     behind a delta-wye transformer the sum of what its lines draw
 * @param imbalancePercent 100·max|I − mean|/mean over the phases that the node has; 0 for an idle node
 * @param deviationAmps max|I − mean|; of scenes the mean by weight
 * @param neutralAmps rms current in the neutral
 * @param peaks the peak of each phase, in the system's order
 * @param phasorAmps rms running current of each line as its phasors add: what a meter shows, at most runningAmps
 */
public record NodeFigures(
        String node,
        Map<Phase, Double> runningAmps,
        double imbalancePercent,
        double deviationAmps,
        double neutralAmps,
        List<PhasePeak> peaks,
        Map<Phase, Double> phasorAmps) {

    /** Name of the node that feeds every panel. */
    public static final String SUPPLY = "supply";
}
