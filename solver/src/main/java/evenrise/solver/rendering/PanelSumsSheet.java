package evenrise.solver.rendering;

import evenrise.solver.document.Schedule;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.dhatim.fastexcel.BorderSide;
import org.dhatim.fastexcel.Table;
import org.dhatim.fastexcel.Worksheet;

/** What every panel comes to, a row each, taken from the sheets of the panels. */
final class PanelSumsSheet {
    /** A column and the name on a panel's sheet that it shows; nothing below the last where there is none to add up. */
    private record Figure(String header, String of, boolean addsUp, String format) {}

    private static final List<Figure> FIGURES = List.of(
            new Figure("Breakers", "breakers", true, "0"),
            new Figure("Slots", "slots", true, "0"),
            new Figure("Spaces", "spaces", true, "0"),
            new Figure("Connected, VA", "connected_va", true, "0"),
            new Figure("Demand factor", "demand_factor", false, "0.00"),
            new Figure("Demand, VA", "demand_va", true, "0"),
            new Figure("Demand, highest line, A", "demand_amps", false, "0.00"),
            new Figure("Running, highest line, A", "running", false, "0.00"),
            new Figure("Allowed, A", "allowed", false, "0.00"),
            new Figure("Left, A", "left", false, "0.00"),
            new Figure("Used, %", "used", false, "0.00"));

    private static final List<Integer> WIDTHS = List.of(30, 12, 10, 10, 14, 12, 14, 16, 16, 12, 12, 12);

    private PanelSumsSheet() {}

    static void write(CalculatedWorkbook workbook, Worksheet sheet, List<Schedule> schedules) {
        List<String> headers = Stream.concat(
                        Stream.of("Panel"), FIGURES.stream().map(Figure::header))
                .toList();
        SheetStyle.header(sheet, 0, headers, WIDTHS);
        for (int row = 0; row < schedules.size(); row++) {
            sheet.value(row + 1, 0, Cells.text(schedules.get(row).panel()));
            for (int i = 0; i < FIGURES.size(); i++) {
                String name = "panel_" + (row + 1) + "_" + FIGURES.get(i).of;
                workbook.formula(sheet, row + 1, i + 1, name, workbook.resultOf(name));
            }
        }
        int panels = schedules.size();
        for (int column = 1; column <= FIGURES.size(); column++) {
            Figure figure = FIGURES.get(column - 1);
            if (figure.addsUp) {
                workbook.formula(
                        sheet,
                        panels + 1,
                        column,
                        "SUM(" + CalculatedWorkbook.range(1, panels, column) + ")",
                        IntStream.rangeClosed(1, panels)
                                .mapToDouble(i -> workbook.resultOf("panel_" + i + "_" + figure.of))
                                .sum());
            }
            sheet.range(1, column, panels + 1, column)
                    .style()
                    .format(figure.format)
                    .set();
        }
        sheet.value(panels + 1, 0, "All panels");
        sheet.range(panels + 1, 0, panels + 1, FIGURES.size())
                .style()
                .bold()
                .borderStyle(BorderSide.TOP, "thin")
                .set();
        Table table = sheet.range(0, 0, panels, FIGURES.size()).createTable(headers.toArray(String[]::new));
        table.setName("panels_table").setDisplayName("panels_table");
        table.styleInfo().setStyleName("TableStyleLight1").setShowRowStripes(false);
        sheet.freezePane(1, 1);
        sheet.repeatRows(0);
    }
}
