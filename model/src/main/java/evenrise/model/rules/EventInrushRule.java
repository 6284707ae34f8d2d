package evenrise.model.rules;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.EventPeak;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.PlanEvent;
import java.util.ArrayList;
import java.util.List;

/** The inrush limits hold for the events that the project names, too. */
final class EventInrushRule implements WholePlantRule {
    @Override
    public String id() {
        return "event-inrush";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<PlanEvent> events = layout.project().behaviourOrDefault().inrushLimitHoldsFor();
        List<BrokenRule> broken = new ArrayList<>();
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

    private static void check(NodeLimits limits, EventPeak peak, List<BrokenRule> broken) {
        limits.inrushLimitAmps().ifPresent(limit -> {
            if (peak.peakInrushAmps() > limit + Tolerances.AMPS) {
                Broken over = Broken.by(kind(peak.event())).node(limits);
                peak.board().ifPresent(id -> over.one("failing", SubjectKind.BOARD, id));
                broken.add(over.word(
                                "failing",
                                peak.board()
                                        .map(id -> "board " + Phrase.quoted(id))
                                        .orElse("a board"))
                        .word("phase", peak.peakPhase())
                        .at(limits.place() + " phase " + peak.peakPhase())
                        .figure(peak.peakInrushAmps(), limit, "A")
                        .build());
            }
        });
    }

    private static BrokenKind kind(PlanEvent event) {
        return switch (event) {
            case RETURN -> BrokenKind.OVER_WHEN_MAINS_RETURN;
            case RELEASE -> BrokenKind.OVER_AT_RELEASE;
            case BOARD_FAILURE -> BrokenKind.OVER_WHEN_BOARD_FAILS;
            case DIP -> BrokenKind.OVER_IN_DIP;
        };
    }
}
