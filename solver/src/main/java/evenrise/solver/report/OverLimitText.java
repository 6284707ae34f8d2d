package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.evaluation.NodeEvent;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import java.util.ArrayList;
import java.util.List;

/** What a plan exceeds beside the hard rules: limits of the electrical review, inrush limits when something happens. */
final class OverLimitText {
    private static final int PLACES = 5;

    private OverLimitText() {}

    /** Nothing where nothing is exceeded. */
    static List<String> lines(Evaluation evaluation, Paint paint) {
        List<String> lines = new ArrayList<>();
        List<Remark> broken = evaluation.review().remarks().stream()
                .filter(remark -> remark.grade() == Grade.BREAKS)
                .toList();
        Section section = new Section(paint, "Electrical limits that are broken, and inrush limits in events");
        BrokenRules.items(Folded.of(broken, evaluation.project()), PLACES, section);
        List<NodeEvent> events = evaluation.eventsOverLimit();
        events.stream().limit(PLACES).forEach(event -> section.item(text(event)));
        if (events.size() > PLACES) {
            section.item("and " + (events.size() - PLACES) + " more peaks of events over an inrush limit");
        }
        if (!broken.isEmpty() || !events.isEmpty()) {
            lines.addAll(section.lines());
        }
        return lines;
    }

    private static String text(NodeEvent event) {
        return event.node() + " peaks at " + Numbers.amps(event.peak().peakInrushAmps()) + " A "
                + EventPeakRow.what(event.peak()).replace("show runs: ", "") + ", over its inrush limit of "
                + Numbers.amps(event.limitAmps())
                + " A, which is not asked to hold then (behaviour.inrush_limit_holds_for)";
    }
}
