package evenrise.solver.report;

import evenrise.model.contract.Words;
import evenrise.model.plan.EventPeak;
import evenrise.model.plan.PeakBasis;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What every node peaks at when something happens, beside its peak in the sequence and its limit. */
final class EventTable {
    private EventTable() {}

    static List<String> lines(
            Project project, List<NodeUse> nodes, List<NodeEvents> events, PeakBasis basis, Paint paint) {
        List<PlanEvent> limited = project.behaviourOrDefault().inrushLimitHoldsFor();
        Table table = new Table()
                .words("Node")
                .number("Sequence")
                .number("Return")
                .number("Release")
                .number("Board fails")
                .number("Deep dip")
                .number("Limit");
        for (int i = 0; i < nodes.size(); i++) {
            NodeUse node = nodes.get(i);
            List<EventPeak> peaks = events.get(i).peaks();
            List<String> cells = new ArrayList<>(List.of(node.node()));
            cells.add(Numbers.amps(node.greatestPeakAmps()));
            for (PlanEvent event : PlanEvent.values()) {
                cells.add(events.get(i)
                        .of(event)
                        .map(peak -> Numbers.amps(peak.peakInrushAmps()))
                        .orElse(Numbers.NONE));
            }
            cells.add(Numbers.amps(node.inrushLimitAmps()));
            boolean isOver = peaks.stream()
                    .anyMatch(peak -> limited.contains(peak.event()) && isOver(peak, node.inrushLimitAmps()));
            table.row(isOver ? Tone.BAD : Tone.PLAIN, cells.toArray(String[]::new));
        }
        String holds = limited.isEmpty()
                ? "The limit is asked to hold for the sequence alone (behaviour.inrush_limit_holds_for names more)."
                : "The limit is asked to hold for the sequence and for: "
                        + String.join(", ", limited.stream().map(Words::word).toList())
                        + ".";
        return new Section(
                        paint,
                        "Peak when something happens while the show runs, " + PeakWords.NOMINAL
                                + ", ampere, worst phase")
                .table(table)
                .text((PeakWords.isEventBound(basis)
                                ? "Upper bounds for sines at that voltage. "
                                : "No bounds: some loads state no inrush_peak_a, or it is guessed. ")
                        + "Return of the mains, release of an emergency, failure of the worst board, a deep dip ridden"
                        + " through. What is on when it happens counts with the greater of running and idle current;"
                        + " what comes on, and the sequence, with idle current and inrush. "
                        + holds)
                .lines();
    }

    private static boolean isOver(EventPeak peak, OptionalDouble limit) {
        return limit.isPresent() && peak.peakInrushAmps() > limit.getAsDouble() + Tolerances.AMPS;
    }
}
