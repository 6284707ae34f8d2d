package evenrise.model.event;

import evenrise.model.project.Phase;
import java.util.OptionalDouble;

/**
 * Greatest current of a node in one part of a rehearsal.
 *
 * @param peakInrushAmps as breakers really closed
 * @param boundAmps the bound at nominal voltage, with the timing tolerance
 * @param limitAmps the node's inrush limit, where it has one
 */
public record NodePeak(
        String node,
        double peakInrushAmps,
        Phase peakPhase,
        double peakAtSeconds,
        double boundAmps,
        OptionalDouble limitAmps) {

    NodePeak withBound(double otherAmps) {
        return new NodePeak(node, peakInrushAmps, peakPhase, peakAtSeconds, otherAmps, limitAmps);
    }

    /** Whether the bound is over the limit. */
    public boolean isOverLimit() {
        return limitAmps.isPresent() && boundAmps > limitAmps.getAsDouble() + 1e-6;
    }
}
