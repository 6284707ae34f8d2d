package evenrise.solver.report;

import evenrise.model.plan.EventPeak;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What one node peaks at when something happens.
 *
 * @param node the panel's id, or the supply
 */
public record EventSheet(String node, List<EventPeak> peaks) {

    /** The supply first, then the panels in the project's order. */
    static List<EventSheet> of(Layout layout) {
        return IntStream.range(0, layout.nodes().size())
                .mapToObj(i -> new EventSheet(
                        layout.nodes().get(i).node(), layout.eventPeaks().get(i)))
                .toList();
    }
}
