package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Grade;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.Nights;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import java.util.List;
import java.util.stream.Collectors;

/** Which stages go into which night, and how the plant stands in the morning. */
final class NightsText {
    private NightsText() {}

    static List<String> lines(Project project, WorkOrder order, NightLimits limits, Paint paint) {
        Section section = new Section(paint, "Nights");
        Nights.Layout nights = Nights.of(order, limits.windowsMinutes());
        Table table = new Table()
                .number("night")
                .number("window, min")
                .words("stages")
                .number("min")
                .text("in the morning");
        for (Nights.Night each : nights.nights()) {
            table.row(
                    Integer.toString(each.number()),
                    Long.toString(Math.round(each.windowMinutes())),
                    each.stages().isEmpty() ? "-" : numbers(each.stages()),
                    Long.toString(Math.round(each.minutes())),
                    each.stages().isEmpty() ? "as before" : morning(project, order, each));
        }
        section.table(table);
        if (!nights.left().isEmpty()) {
            section.text(
                    Tone.BAD,
                    "No night is left for stage " + numbers(nights.left())
                            + ". Maybe add a night, lengthen one, or take another crew and state its minutes in work.");
        }
        section.text("The sheet of a night's last stage names every limit that is broken in the morning.");
        return section.lines();
    }

    private static String morning(Project project, WorkOrder order, Nights.Night night) {
        WorkStage last = order.stages().get(night.stages().get(night.stages().size() - 1) - 1);
        Evaluation after = Evaluation.of(Layout.of(project, last.after()));
        long electrical = after.review().remarks().stream()
                .filter(remark -> remark.grade() == Grade.BREAKS)
                .count();
        long broken = after.verdict().violations().size() + electrical;
        return broken == 0 ? "whole" : broken + " limits broken";
    }

    private static String numbers(List<Integer> stages) {
        return stages.stream().map(String::valueOf).collect(Collectors.joining(" "));
    }
}
