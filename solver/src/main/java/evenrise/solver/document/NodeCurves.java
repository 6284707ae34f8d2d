package evenrise.solver.document;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Current by the envelopes at nominal voltage of the supply or of one panel over time.
 *
 * @param node the panel's id, or the supply
 * @param inrushLimitAmps greatest allowed peak, where there is one
 * @param phases one envelope a phase
 */
public record NodeCurves(String node, OptionalDouble inrushLimitAmps, List<Envelope> phases) {
    public NodeCurves {
        phases = List.copyOf(phases);
    }

    /** The largest peak of its phases. */
    public double peakAmps() {
        return phases.stream().mapToDouble(Envelope::peakAmps).max().orElse(0);
    }
}
