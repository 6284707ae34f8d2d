package evenrise.solver.rendering;

import evenrise.solver.document.PanelSums;
import evenrise.solver.document.Schedule;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Worksheet;

/** What stands below a panel's slots: connected, demand, continuous and allowed, each computed from the rows. */
final class ScheduleSums {
    private static final int RUNNING = 8;
    private final Schedule schedule;
    private final SumLines lines;
    private final SumLines.Place place;

    ScheduleSums(CalculatedWorkbook workbook, Worksheet sheet, Schedule schedule, String names, SumLines.Place place) {
        this.schedule = schedule;
        this.place = place;
        this.lines = new SumLines(workbook, sheet, names, place);
    }

    void write() {
        PanelSums sums = schedule.sums();
        lines.head(schedule.phases());
        SumLines.Line own = lines.line(
                "Its own circuits",
                i -> "SUM(" + place.column(place.firstVoltAmps() + i) + ")",
                i -> "SUMIF(" + place.column(1) + ",\"" + phase(i) + "\"," + place.column(RUNNING) + ")",
                own(Schedule.Slot::voltAmps),
                own(Schedule.Slot::runningAmps));
        SumLines.Line connected =
                sums.feedsOn() ? lines.added("Connected", own, lines.given("Fed on through it", sums.fedOn())) : own;
        if (!sums.feedsOn()) {
            lines.rename(own, "Connected");
        }
        lines.named(connected, "connected");
        int factor =
                lines.number("Demand factor", 1, "none is stated, so none is taken: change it here", "demand_factor");
        SumLines.Line demand = lines.scaled("Demand", connected, factor);
        lines.named(demand, "demand");
        sums.continuousFactor().ifPresent(counts -> continuous(sums));
        SumLines.Line running = sums.worstSceneAmps().isEmpty() ? connected : lines.scene(sums.worstSceneAmps());
        allowed(sums, running);
        counts();
    }

    private String phase(int i) {
        return schedule.phases().get(i).phase();
    }

    private List<Double> own(ToDoubleFunction<Schedule.Slot> figure) {
        return IntStream.range(0, place.phases())
                .mapToObj(i -> schedule.rows().stream()
                        .filter(each -> each.phase().equals(phase(i)))
                        .flatMap(each -> Stream.of(each.left(), each.right()))
                        .mapToDouble(figure)
                        .sum())
                .toList();
    }

    /** As what counts for continuous loads is held against the device before the bus. */
    private void continuous(PanelSums sums) {
        SumLines.Line own = lines.line(
                "Its own, continuous counted",
                i -> "SUMPRODUCT(" + place.column(place.firstVoltAmps() + i) + "," + place.column(place.counts()) + ")",
                i -> "SUMPRODUCT((" + place.column(1) + "=\"" + phase(i) + "\")*1," + place.column(RUNNING) + ","
                        + place.column(place.counts()) + ")",
                own(slot -> slot.voltAmps() * slot.continuousFactor()),
                own(slot -> slot.runningAmps() * slot.continuousFactor()));
        SumLines.Line all = sums.feedsOn()
                ? lines.added(
                        "All, continuous counted",
                        own,
                        lines.given("Fed on, continuous counted", sums.fedOnContinuous()))
                : own;
        lines.named(all, "continuous");
        lines.number(
                "Device before the bus, A",
                sums.deviceAmps(),
                "at least the highest line of what stands above",
                "device");
    }

    private void allowed(PanelSums sums, SumLines.Line running) {
        int bus = lines.number("Bus rating, A", sums.busAmps(), "", "bus");
        int fraction = lines.number("Allowed fraction", sums.allowedFraction(), "by the hard rule", "allowed_fraction");
        double allowed = sums.busAmps() * sums.allowedFraction();
        int limit = lines.computed("Allowed, A", lines.total(bus) + "*" + lines.total(fraction), allowed, "allowed");
        String highest = lines.highest(running);
        double most = Collections.max(running.amps());
        lines.computed("Left, A", lines.total(limit) + "-" + highest, allowed - most, "left");
        lines.computed("Used, %", "100*" + highest + "/" + lines.total(limit), 100 * most / allowed, "used");
        lines.nameHighest(running, "running");
    }

    private void counts() {
        List<Schedule.Slot> slots = schedule.rows().stream()
                .flatMap(each -> Stream.of(each.left(), each.right()))
                .filter(slot -> slot.number() > 0)
                .toList();
        lines.computed(
                "Breakers",
                "COUNTIF(" + place.column(7) + ",1)",
                (double) slots.stream().filter(Schedule.Slot::isFirst).count(),
                "breakers");
        lines.computed("Slots", "ROWS(" + place.column(0) + ")", (double) slots.size(), "slots");
        lines.computed(
                "Spaces",
                "COUNTIF(" + place.column(2) + ",\"space\")",
                (double) slots.stream()
                        .filter(slot -> slot.state().equals("space"))
                        .count(),
                "spaces");
    }
}
