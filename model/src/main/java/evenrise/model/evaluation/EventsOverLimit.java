package evenrise.model.evaluation;

import evenrise.model.plan.EventPeak;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.List;

/** Peaks of events over an inrush limit that the project does not ask to hold for them; where it does, a hard rule says so. */
final class EventsOverLimit {
    private EventsOverLimit() {}

    static List<NodeEvent> of(Layout layout) {
        List<PlanEvent> ruled = layout.project().behaviourOrDefault().inrushLimitHoldsFor();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<NodeEvent> over = new ArrayList<>();
        for (int node = 0; node < limits.size(); node++) {
            NodeLimits limit = limits.get(node);
            if (limit.inrushLimitAmps().isEmpty()) {
                continue;
            }
            double most = limit.inrushLimitAmps().getAsDouble() + Tolerances.AMPS;
            for (EventPeak peak : layout.eventPeaks().get(node)) {
                if (peak.peakInrushAmps() > most && !ruled.contains(peak.event())) {
                    over.add(new NodeEvent(
                            limit.node(), peak, limit.inrushLimitAmps().getAsDouble()));
                }
            }
        }
        return List.copyOf(over);
    }
}
