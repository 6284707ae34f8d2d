package evenrise.solver.report;

import evenrise.model.plan.EventPeak;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What one node peaks at when something happens.
 *
 * @param node the panel's id, or the supply
 */
public record NodeEvents(String node, List<EventPeak> peaks) {

    /** The supply first, then the panels in the project's order. */
    public static List<NodeEvents> of(Layout layout) {
        return IntStream.range(0, layout.nodes().size())
                .mapToObj(i -> new NodeEvents(
                        layout.nodes().get(i).node(), layout.eventPeaks().get(i)))
                .toList();
    }

    /** Where it can happen. */
    public Optional<EventPeak> of(PlanEvent event) {
        return peaks.stream().filter(each -> each.event() == event).findFirst();
    }
}
