package evenrise.solver.document;

import evenrise.model.plan.EventPeak;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.solver.report.NodeEvents;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What the supply peaks at in the sequence or when something happens, and the place that is then nearest its limit.
 *
 * @param what happens
 * @param supply with the supply's limit
 * @param how the phase and, where one makes it, the board
 * @param times of the sequence's peak at the supply; empty for the sequence itself
 * @param tightest id of the place that uses most of its limit; empty where no place states one
 * @param atTightest figure there
 */
public record EventLoading(String what, Bullet supply, String how, String times, String tightest, Bullet atTightest) {

    /** The sequence, then what may happen. */
    static List<EventLoading> of(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<NodeEvents> events = NodeEvents.of(layout);
        double sequence = layout.worstPeak(0).amps();
        List<EventLoading> rows = new ArrayList<>();
        rows.add(row(
                "Sequence",
                limits,
                layout.distribution().points().stream()
                        .map(point -> OptionalDouble.of(
                                layout.worstPeak(point.index()).amps()))
                        .toList(),
                "phase " + layout.worstPeak(0).phase(),
                ""));
        for (EventPeak peak : events.get(0).peaks()) {
            rows.add(row(
                    words(peak.event()),
                    limits,
                    events.stream()
                            .map(each -> each.of(peak.event()).stream()
                                    .mapToDouble(EventPeak::peakInrushAmps)
                                    .findFirst())
                            .toList(),
                    "phase " + peak.peakPhase()
                            + peak.board().map(board -> ", board " + board).orElse(""),
                    sequence > 0
                            ? String.format(Locale.ROOT, "%.1f times the sequence", peak.peakInrushAmps() / sequence)
                            : ""));
        }
        return List.copyOf(rows);
    }

    private static EventLoading row(
            String what, List<NodeLimits> limits, List<OptionalDouble> amps, String how, String times) {
        String tightest = "";
        Bullet atTightest = new Bullet(0, 0, "A");
        for (int i = 0; i < limits.size(); i++) {
            Bullet here = new Bullet(
                    amps.get(i).orElse(0), limits.get(i).inrushLimitAmps().orElse(0), "A");
            if (here.hasLimit() && here.usedPercent() > atTightest.usedPercent()) {
                tightest = limits.get(i).node();
                atTightest = here;
            }
        }
        return new EventLoading(
                what,
                new Bullet(
                        amps.get(0).orElse(0), limits.get(0).inrushLimitAmps().orElse(0), "A"),
                how,
                times,
                tightest,
                atTightest);
    }

    /** For what a hard rule holds peaks to the limits. */
    static String held(Layout layout) {
        List<PlanEvent> held = layout.project().behaviourOrDefault().inrushLimitHoldsFor();
        return "By hard rule the inrush limits hold for the sequence"
                + (held.isEmpty()
                        ? " alone; peaks of events stand beside them to compare."
                        : " and for: "
                                + held.stream()
                                        .map(event -> words(event).toLowerCase(Locale.ROOT))
                                        .collect(Collectors.joining(", "))
                                + ".");
    }

    /** As a heading. */
    static String words(PlanEvent event) {
        return switch (event) {
            case RETURN -> "Mains return";
            case RELEASE -> "Emergency released";
            case BOARD_FAILURE -> "Worst board fails";
            case DIP -> "Dip ridden through";
        };
    }
}
