package evenrise.solver.document;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Current of a node over time by the envelopes at nominal voltage, as one command is carried out.
 *
 * @param node the panel's or node's id, or the supply
 * @param system whose command; empty where one command switches all
 * @param inrushLimitAmps greatest allowed peak, where there is one
 * @param phases one envelope a phase of the node
 */
public record NodeCurves(String node, Optional<String> system, OptionalDouble inrushLimitAmps, List<Envelope> phases) {
    public NodeCurves {
        phases = List.copyOf(phases);
    }

    /** The largest peak of its phases. */
    public double peakAmps() {
        return phases.stream().mapToDouble(Envelope::peakAmps).max().orElse(0);
    }

    /** The largest crest of its phases once all is on and in use; 0 where one command switches all. */
    public double usedAmps() {
        return phases.stream().mapToDouble(Envelope::usedAmps).max().orElse(0);
    }
}
