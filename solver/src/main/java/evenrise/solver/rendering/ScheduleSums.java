package evenrise.solver.rendering;

import evenrise.solver.document.PanelSums;
import evenrise.solver.document.Schedule;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Worksheet;

/** What stands below a panel's slots: connected, demand, continuous and allowed, each computed from the rows. */
final class ScheduleSums {
    private static final int NAME = 3;
    private static final int RUNNING = 8;
    /**
     * Where the slots stand.
     *
     * @param top the first row
     * @param bottom the last
     * @param firstVoltAmps column of the first phase's volt-amperes
     */
    record Place(int top, int bottom, int firstVoltAmps) {
        String column(int column) {
            return CalculatedWorkbook.range(top, bottom, column);
        }
    }

    /** One line: volt-amperes by phase, then amperes by phase. */
    private record Line(int row, List<Double> voltAmps, List<Double> amps) {}

    private final CalculatedWorkbook workbook;
    private final Worksheet sheet;
    private final Schedule schedule;
    private final String names;
    private final Place place;
    private final int phases;
    private final int total;
    private final int firstAmps;
    private final int counts;
    private int row;

    ScheduleSums(CalculatedWorkbook workbook, Worksheet sheet, Schedule schedule, String names, Place place) {
        this.workbook = workbook;
        this.sheet = sheet;
        this.schedule = schedule;
        this.names = names;
        this.place = place;
        this.phases = schedule.phases().size();
        this.total = place.firstVoltAmps + phases;
        this.firstAmps = total + 1;
        this.counts = total + 4;
        this.row = place.bottom + 2;
    }

    void write() {
        PanelSums sums = schedule.sums();
        head();
        Line own = line(
                "Its own circuits",
                i -> "SUM(" + place.column(place.firstVoltAmps + i) + ")",
                i -> "SUMIF(" + place.column(1) + ",\"" + phase(i) + "\"," + place.column(RUNNING) + ")",
                own(Schedule.Slot::voltAmps),
                own(Schedule.Slot::runningAmps));
        Line connected = sums.feedsOn() ? added("Connected", own, given("Fed on through it", sums.fedOn())) : own;
        if (!sums.feedsOn()) {
            sheet.value(own.row, NAME, "Connected");
        }
        named(connected, "connected");
        int factor = number("Demand factor", 1, "none is stated, so none is taken: change it here", "demand_factor");
        Line demand = scaled("Demand", connected, factor);
        named(demand, "demand");
        sums.continuousFactor().ifPresent(counts -> continuous(sums));
        Line running = sums.worstSceneAmps().isEmpty() ? connected : scene(sums.worstSceneAmps());
        allowed(sums, running);
        counts();
    }

    private void head() {
        sheet.value(row, NAME, "Sums");
        for (int i = 0; i < phases; i++) {
            sheet.value(row, place.firstVoltAmps + i, schedule.phases().get(i).name() + ", VA");
            sheet.value(row, firstAmps + i, schedule.phases().get(i).name() + ", A");
        }
        sheet.value(row, total, "All, VA");
        sheet.value(row, firstAmps + phases, "Highest line, A");
        SheetStyle.header(sheet.range(row, NAME, row, firstAmps + phases).style());
        row++;
    }

    private String phase(int i) {
        return schedule.phases().get(i).phase();
    }

    private List<Double> own(ToDoubleFunction<Schedule.Slot> figure) {
        return IntStream.range(0, phases)
                .mapToObj(i -> schedule.rows().stream()
                        .filter(each -> each.phase().equals(phase(i)))
                        .flatMap(each -> Stream.of(each.left(), each.right()))
                        .mapToDouble(figure)
                        .sum())
                .toList();
    }

    private Line line(
            String name,
            IntFunction<String> voltAmps,
            IntFunction<String> amps,
            List<Double> voltAmpsResults,
            List<Double> ampsResults) {
        sheet.value(row, NAME, name);
        for (int i = 0; i < phases; i++) {
            workbook.formula(sheet, row, place.firstVoltAmps + i, voltAmps.apply(i), voltAmpsResults.get(i));
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
                "SUM(" + CalculatedWorkbook.cell(row, place.firstVoltAmps) + ":"
                        + CalculatedWorkbook.cell(row, total - 1) + ")",
                line.voltAmps.stream().mapToDouble(Double::doubleValue).sum());
        highest(line.amps);
        sheet.range(row, place.firstVoltAmps, row, total).style().format("0").set();
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

    private Line given(String name, List<PanelSums.Beyond> beyond) {
        sheet.value(row, NAME, name);
        for (int i = 0; i < phases; i++) {
            sheet.value(
                    row,
                    place.firstVoltAmps + i,
                    CalculatedWorkbook.plain(beyond.get(i).voltAmps()));
            sheet.value(
                    row, firstAmps + i, CalculatedWorkbook.plain(beyond.get(i).amps()));
        }
        return finished(new Line(
                row,
                beyond.stream().map(PanelSums.Beyond::voltAmps).toList(),
                beyond.stream().map(PanelSums.Beyond::amps).toList()));
    }

    private Line added(String name, Line first, Line second) {
        return line(
                name,
                i -> sum(first, second, place.firstVoltAmps + i),
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

    private Line scaled(String name, Line line, int factor) {
        String by = "*" + CalculatedWorkbook.cell(factor, total);
        return line(
                name,
                i -> CalculatedWorkbook.cell(line.row, place.firstVoltAmps + i) + by,
                i -> CalculatedWorkbook.cell(line.row, firstAmps + i) + by,
                line.voltAmps,
                line.amps);
    }

    /** As what counts for continuous loads is held against the device before the bus. */
    private void continuous(PanelSums sums) {
        Line own = line(
                "Its own, continuous counted",
                i -> "SUMPRODUCT(" + place.column(place.firstVoltAmps + i) + "," + place.column(counts) + ")",
                i -> "SUMPRODUCT((" + place.column(1) + "=\"" + phase(i) + "\")*1," + place.column(RUNNING) + ","
                        + place.column(counts) + ")",
                own(slot -> slot.voltAmps() * slot.continuousFactor()),
                own(slot -> slot.runningAmps() * slot.continuousFactor()));
        Line all = sums.feedsOn()
                ? added("All, continuous counted", own, given("Fed on, continuous counted", sums.fedOnContinuous()))
                : own;
        named(all, "continuous");
        number(
                "Device before the bus, A",
                sums.deviceAmps(),
                "at least the highest line of what stands above",
                "device");
    }

    private Line scene(List<Double> amps) {
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

    private void allowed(PanelSums sums, Line running) {
        int bus = number("Bus rating, A", sums.busAmps(), "", "bus");
        int fraction = number("Allowed fraction", sums.allowedFraction(), "by the hard rule", "allowed_fraction");
        double allowed = sums.busAmps() * sums.allowedFraction();
        int limit = computed(
                "Allowed, A",
                CalculatedWorkbook.cell(bus, total) + "*" + CalculatedWorkbook.cell(fraction, total),
                allowed,
                "allowed");
        String highest = CalculatedWorkbook.cell(running.row, firstAmps + phases);
        double most = Collections.max(running.amps);
        computed("Left, A", CalculatedWorkbook.cell(limit, total) + "-" + highest, allowed - most, "left");
        computed(
                "Used, %",
                "100*" + highest + "/" + CalculatedWorkbook.cell(limit, total), 100 * most / allowed, "used");
        workbook.name(sheet, running.row, firstAmps + phases, names + "_running");
    }

    private void counts() {
        List<Schedule.Slot> slots = schedule.rows().stream()
                .flatMap(each -> Stream.of(each.left(), each.right()))
                .filter(slot -> slot.number() > 0)
                .toList();
        computed(
                "Breakers",
                "COUNTIF(" + place.column(7) + ",1)",
                (double) slots.stream().filter(Schedule.Slot::isFirst).count(),
                "breakers");
        computed("Slots", "ROWS(" + place.column(0) + ")", (double) slots.size(), "slots");
        computed(
                "Spaces",
                "COUNTIF(" + place.column(2) + ",\"space\")",
                (double) slots.stream()
                        .filter(slot -> slot.state().equals("space"))
                        .count(),
                "spaces");
    }

    private int number(String name, double value, String note, String as) {
        sheet.value(row, NAME, name);
        sheet.value(row, total, CalculatedWorkbook.plain(value));
        sheet.value(row, firstAmps, note);
        workbook.name(sheet, row, total, names + "_" + as);
        return row++;
    }

    private int computed(String name, String expression, double result, String as) {
        sheet.value(row, NAME, name);
        workbook.formula(sheet, row, total, expression, result);
        sheet.style(row, total)
                .format(result == Math.rint(result) ? "0" : "0.00")
                .set();
        workbook.name(sheet, row, total, names + "_" + as);
        return row++;
    }

    private void named(Line line, String as) {
        workbook.name(sheet, line.row, total, names + "_" + as + "_va");
        workbook.name(sheet, line.row, firstAmps + phases, names + "_" + as + "_amps");
    }
}
