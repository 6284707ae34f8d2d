package evenrise.solver.rendering;

import evenrise.solver.document.PanelSums;
import evenrise.solver.document.Schedule;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.dhatim.fastexcel.Worksheet;

/** Lines below a panel's slots, one after another: volt-amperes and amperes by phase, and single figures. */
final class SumLines {
    private static final int NAME = 3;

    /**
     * Where the slots stand.
     *
     * @param top the first row
     * @param bottom the last
     * @param firstVoltAmps column of the first phase's volt-amperes; what they all come to stands behind the last
     */
    record Place(int top, int bottom, int firstVoltAmps, int phases) {
        String column(int column) {
            return CalculatedWorkbook.range(top, bottom, column);
        }

        int total() {
            return firstVoltAmps + phases;
        }

        /** Where the slots say what a circuit counts by. */
        int counts() {
            return total() + 4;
        }
    }

    /** One line: volt-amperes by phase, then amperes by phase. */
    record Line(int row, List<Double> voltAmps, List<Double> amps) {}

    private final CalculatedWorkbook workbook;
    private final Worksheet sheet;
    private final String names;
    private final Place place;
    private final int phases;
    private final int total;
    private final int firstAmps;
    private int row;

    /** @param names what the names of its figures begin with */
    SumLines(CalculatedWorkbook workbook, Worksheet sheet, String names, Place place) {
        this.workbook = workbook;
        this.sheet = sheet;
        this.names = names;
        this.place = place;
        this.phases = place.phases();
        this.total = place.total();
        this.firstAmps = total + 1;
        this.row = place.bottom() + 2;
    }

    void head(List<Schedule.PhaseHead> heads) {
        sheet.value(row, NAME, "Sums");
        for (int i = 0; i < phases; i++) {
            sheet.value(row, place.firstVoltAmps() + i, heads.get(i).name() + ", VA");
            sheet.value(row, firstAmps + i, heads.get(i).name() + ", A");
        }
        sheet.value(row, total, "All, VA");
        sheet.value(row, firstAmps + phases, "Highest line, A");
        SheetStyle.header(sheet.range(row, NAME, row, firstAmps + phases).style());
        row++;
    }

    void rename(Line line, String name) {
        sheet.value(line.row, NAME, name);
    }

    /** The cell with a single figure, or what a line's phases come to. */
    String total(int row) {
        return CalculatedWorkbook.cell(row, total);
    }

    /** The cell with the amperes of the phase that carries most. */
    String highest(Line line) {
        return CalculatedWorkbook.cell(line.row, firstAmps + phases);
    }

    void nameHighest(Line line, String as) {
        workbook.name(sheet, line.row, firstAmps + phases, names + "_" + as);
    }

    Line line(
            String name,
            IntFunction<String> voltAmps,
            IntFunction<String> amps,
            List<Double> voltAmpsResults,
            List<Double> ampsResults) {
        sheet.value(row, NAME, name);
        for (int i = 0; i < phases; i++) {
            workbook.formula(sheet, row, place.firstVoltAmps() + i, voltAmps.apply(i), voltAmpsResults.get(i));
            workbook.formula(sheet, row, firstAmps + i, amps.apply(i), ampsResults.get(i));
        }
        return finished(new Line(row, voltAmpsResults, ampsResults));
    }

    /** Its sum and its highest. */
    private Line finished(Line line) {
        workbook.formula(
                sheet,
                row,
                total,
                "SUM(" + CalculatedWorkbook.cell(row, place.firstVoltAmps()) + ":"
                        + CalculatedWorkbook.cell(row, total - 1) + ")",
                line.voltAmps.stream().mapToDouble(Double::doubleValue).sum());
        highest(line.amps);
        sheet.range(row, place.firstVoltAmps(), row, total).style().format("0").set();
        sheet.range(row, firstAmps, row, firstAmps + phases)
                .style()
                .format("0.00")
                .set();
        row++;
        return line;
    }

    private void highest(List<Double> amps) {
        workbook.formula(
                sheet,
                row,
                firstAmps + phases,
                "MAX(" + CalculatedWorkbook.cell(row, firstAmps) + ":"
                        + CalculatedWorkbook.cell(row, firstAmps + phases - 1) + ")",
                Collections.max(amps));
    }

    Line given(String name, List<PanelSums.Beyond> beyond) {
        sheet.value(row, NAME, name);
        for (int i = 0; i < phases; i++) {
            sheet.value(
                    row,
                    place.firstVoltAmps() + i,
                    CalculatedWorkbook.plain(beyond.get(i).voltAmps()));
            sheet.value(
                    row, firstAmps + i, CalculatedWorkbook.plain(beyond.get(i).amps()));
        }
        return finished(new Line(
                row,
                beyond.stream().map(PanelSums.Beyond::voltAmps).toList(),
                beyond.stream().map(PanelSums.Beyond::amps).toList()));
    }

    Line added(String name, Line first, Line second) {
        return line(
                name,
                i -> sum(first, second, place.firstVoltAmps() + i),
                i -> sum(first, second, firstAmps + i),
                sums(first.voltAmps, second.voltAmps),
                sums(first.amps, second.amps));
    }

    private static String sum(Line first, Line second, int column) {
        return CalculatedWorkbook.cell(first.row, column) + "+" + CalculatedWorkbook.cell(second.row, column);
    }

    private static List<Double> sums(List<Double> first, List<Double> second) {
        return IntStream.range(0, first.size())
                .mapToObj(i -> first.get(i) + second.get(i))
                .toList();
    }

    Line scaled(String name, Line line, int factor) {
        String by = "*" + CalculatedWorkbook.cell(factor, total);
        return line(
                name,
                i -> CalculatedWorkbook.cell(line.row, place.firstVoltAmps() + i) + by,
                i -> CalculatedWorkbook.cell(line.row, firstAmps + i) + by,
                line.voltAmps,
                line.amps);
    }

    Line scene(List<Double> amps) {
        sheet.value(row, NAME, "Worst scene");
        for (int i = 0; i < phases; i++) {
            sheet.value(row, firstAmps + i, CalculatedWorkbook.plain(amps.get(i)));
        }
        highest(amps);
        sheet.range(row, firstAmps, row, firstAmps + phases)
                .style()
                .format("0.00")
                .set();
        return new Line(row++, List.of(), amps);
    }

    int number(String name, double value, String note, String as) {
        sheet.value(row, NAME, name);
        sheet.value(row, total, CalculatedWorkbook.plain(value));
        sheet.value(row, firstAmps, note);
        workbook.name(sheet, row, total, names + "_" + as);
        return row++;
    }

    int computed(String name, String expression, double result, String as) {
        sheet.value(row, NAME, name);
        workbook.formula(sheet, row, total, expression, result);
        sheet.style(row, total)
                .format(result == Math.rint(result) ? "0" : "0.00")
                .set();
        workbook.name(sheet, row, total, names + "_" + as);
        return row++;
    }

    void named(Line line, String as) {
        workbook.name(sheet, line.row, total, names + "_" + as + "_va");
        workbook.name(sheet, line.row, firstAmps + phases, names + "_" + as + "_amps");
    }
}
