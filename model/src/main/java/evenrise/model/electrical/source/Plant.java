package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Phasors of a plant: sources, what stands between them and the points of the distribution, loads at panels. Every point has
 * voltages and currents of its own system, against phase A of its own.
 */
public interface Plant {
    /** What the node behind the source is called, beside the panels. */
    String SUPPLY = "supply";

    /** Names of the points that it knows; panels without impedances before them may be missing. */
    Collection<String> nodes();

    /** Voltages of a point's lines to neutral where nothing draws. */
    LineValues nominal(String node);

    /** The point, then all that feed it at its own voltage. */
    List<String> carrying(String node);

    /** Parts of a plant whose drops add up to that at a point. */
    List<String> zones(String node);

    /** Whether what a panel draws drops any voltage in a zone. */
    boolean touches(String zone, String panel);

    /** What the currents of a panel's lines drop in a zone that they touch, as a point of that zone sees it. */
    LineValues drop(String zone, String panel, LineValues lines);

    /** Whether loads may sit there. */
    boolean isPanel(String node);

    /** Where every panel draws what {@code draws} says. */
    RadialPlant.Voltages voltages(Map<String, RadialPlant.Draw> draws);

    /**
     * Of some panels, at which impedances draw beside steady currents.
     *
     * @param amps steady currents, by panel
     * @param steady voltages that these leave alone
     */
    Response response(Map<String, LineValues> amps, RadialPlant.Voltages steady, List<String> panels);

    /** The voltages at points with impedances at some panels: asked for many sets of these. */
    interface Response {
        /** @param siemens of the panels in their order */
        Function<String, LineValues> to(List<LineMatrix> siemens);
    }

    /** Drops of the currents that are added to it. */
    Drops drops();

    /** Drops at every point of currents that panels draw. */
    interface Drops {
        void add(String panel, LineValues lines);

        LineValues at(String node);
    }

    /** What the currents of one panel's lines drop at a point. */
    default LineValues dropAt(String node, String panel, LineValues lines) {
        LineValues sum = null;
        for (String zone : zones(node)) {
            if (touches(zone, panel)) {
                LineValues drop = drop(zone, panel, lines);
                sum = sum == null ? drop : sum.plus(drop);
            }
        }
        return sum == null ? LineValues.ZERO : sum;
    }
}
