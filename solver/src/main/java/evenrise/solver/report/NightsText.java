package evenrise.solver.report;

import java.util.List;
import java.util.stream.Collectors;

/** Which stages go into which night, and how the plant stands in the morning. */
final class NightsText {
    private NightsText() {}

    static List<String> lines(WorkSheets sheets, Paint paint) {
        Section section = new Section(paint, "Nights");
        Table table = new Table()
                .number("night")
                .number("window, min")
                .words("stages")
                .number("min")
                .text("in the morning");
        for (WorkNight each : sheets.nights()) {
            table.row(
                    Integer.toString(each.number()),
                    Long.toString(each.window()),
                    each.stages().isEmpty() ? "-" : numbers(each.stages()),
                    Long.toString(each.rounded()),
                    each.morning());
        }
        section.table(table);
        if (!sheets.left().isEmpty()) {
            section.text(
                    Tone.BAD,
                    "No night is left for stage " + numbers(sheets.left())
                            + ". Maybe add a night, lengthen one, or take another crew and state its minutes in work.");
        }
        section.text("The sheet of a night's last stage names every limit that is broken in the morning.");
        return section.lines();
    }

    private static String numbers(List<Integer> stages) {
        return stages.stream().map(String::valueOf).collect(Collectors.joining(" "));
    }
}
