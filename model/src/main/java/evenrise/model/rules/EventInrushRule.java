package evenrise.model.rules;

import evenrise.model.plan.EventPeak;
import evenrise.model.project.PlanEvent;
import java.util.ArrayList;
import java.util.List;

/** The inrush limits hold for the events that the project names, too. */
final class EventInrushRule implements Rule {
    @Override
    public String id() {
        return "event-inrush";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<PlanEvent> events = layout.project().behaviourOrDefault().inrushLimitHoldsFor();
        List<String> broken = new ArrayList<>();
        if (events.isEmpty()) {
            return broken;
        }
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        for (int node = 0; node < limits.size(); node++) {
            for (EventPeak peak : layout.eventPeaks().get(node)) {
                if (events.contains(peak.event())) {
                    check(limits.get(node), peak, broken);
                }
            }
        }
        return broken;
    }

    private static void check(NodeLimits limits, EventPeak peak, List<String> broken) {
        limits.inrushLimitAmps().ifPresent(limit -> {
            if (peak.peakInrushAmps() > limit + Tolerances.AMPS) {
                broken.add(limits.label() + " peaks at " + Say.amps(peak.peakInrushAmps(), limit) + " on phase "
                        + peak.peakPhase() + " " + when(peak) + ", allowed are "
                        + Say.amps(limit, peak.peakInrushAmps())
                        + " (inrush_limit_holds_for). Maybe " + cure(peak.event()) + ".");
            }
        });
    }

    private static String when(EventPeak peak) {
        return switch (peak.event()) {
            case RETURN -> "when the mains return";
            case RELEASE -> "when an emergency is released";
            case BOARD_FAILURE ->
                peak.board()
                        .map(id -> "when board " + Say.quoted(id) + " fails")
                        .orElse("when a board fails");
            case DIP -> "when a deep dip is ridden through";
        };
    }

    private static String cure(PlanEvent event) {
        return switch (event) {
            case RETURN -> "move unswitched loads to other panels or phases, or let a board switch them";
            case RELEASE ->
                "switch the dropped loads with the highest inrush further apart, or spread them over phases";
            case BOARD_FAILURE -> "spread the board's loads over phases or panels, or over more boards";
            case DIP -> "spread the loads with the highest inrush over panels and phases";
        };
    }
}
