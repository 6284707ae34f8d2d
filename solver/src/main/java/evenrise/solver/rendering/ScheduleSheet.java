package evenrise.solver.rendering;

import evenrise.solver.document.Fact;
import evenrise.solver.document.Schedule;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Table;
import org.dhatim.fastexcel.Worksheet;

/**
 * A panel's schedule: what stands above it, a row a slot that can be sorted and filtered, and below it the sums, which
 * follow from the currents in the rows.
 */
final class ScheduleSheet {
    private static final List<String> BEFORE = List.of(
            "Slot", "Phase", "State", "Load", "Name", "Breaker, A", "Poles", "Pole", "Running, A", "VA for each A");
    private static final List<Integer> WIDTHS_BEFORE = List.of(8, 9, 10, 26, 36, 11, 9, 8, 11, 11);
    private static final List<String> BEHIND =
            List.of("On, s", "Board/output", "Emergency", "Conductor", "Counts, continuous", "Notes");
    private static final List<Integer> WIDTHS_BEHIND = List.of(12, 20, 13, 14, 14, 20);
    private static final int VOLT_AMPS_WIDTH = 12;
    private static final int PHASE = 1;
    private static final int STATE = 2;
    private static final int POLE = 7;
    private static final int RUNNING = 8;
    private static final int VOLT_AMPS_PER_AMP = 9;
    private static final int FACTS_ABREAST = 2;
    private static final int SECOND_FACT = 5;

    private final CalculatedWorkbook workbook;
    private final Worksheet sheet;
    private final Schedule schedule;
    private final String names;
    private final int top;
    private final List<Schedule.Slot> slots;
    private final List<String> phases;

    private ScheduleSheet(CalculatedWorkbook workbook, Worksheet sheet, Schedule schedule, int number) {
        this.workbook = workbook;
        this.sheet = sheet;
        this.schedule = schedule;
        this.names = "panel_" + number;
        this.top = 3 + (schedule.head().size() + 1) / FACTS_ABREAST;
        this.slots = schedule.rows().stream()
                .flatMap(row -> Stream.of(row.left(), row.right()))
                .filter(slot -> slot.number() > 0)
                .sorted(Comparator.comparingInt(Schedule.Slot::number))
                .toList();
        this.phases = schedule.phases().stream().map(Schedule.PhaseHead::phase).toList();
    }

    /** @param number of the panel, from 1, which names begin with */
    static void write(CalculatedWorkbook workbook, Worksheet sheet, Schedule schedule, int number) {
        new ScheduleSheet(workbook, sheet, schedule, number).write();
    }

    private void write() {
        head();
        List<String> heads = new ArrayList<>(BEFORE);
        List<Integer> widths = new ArrayList<>(WIDTHS_BEFORE);
        schedule.phases().forEach(phase -> {
            heads.add(phase.name() + ", VA");
            widths.add(VOLT_AMPS_WIDTH);
        });
        heads.addAll(BEHIND);
        widths.addAll(WIDTHS_BEHIND);
        int last = heads.size() - 1;
        int bottom = top + slots.size();
        SheetStyle.header(sheet, top, heads, widths);
        for (int i = 0; i < slots.size(); i++) {
            slot(top + 1 + i, slots.get(i));
        }
        sheet.range(top + 1, 0, bottom, last)
                .style()
                .wrapText(true)
                .verticalAlignment("top")
                .set();
        sheet.range(top + 1, RUNNING, bottom, VOLT_AMPS_PER_AMP)
                .style()
                .format("0.00")
                .set();
        sheet.range(top + 1, BEFORE.size(), bottom, BEFORE.size() + phases.size() - 1)
                .style()
                .format("0")
                .set();
        Table table = sheet.range(top, 0, bottom, last).createTable(heads.toArray(String[]::new));
        table.setName(names + "_slots").setDisplayName(names + "_slots");
        table.styleInfo().setStyleName("TableStyleLight1").setShowRowStripes(false);
        sheet.repeatRows(top);
        new ScheduleSums(
                        workbook,
                        sheet,
                        schedule,
                        names,
                        new SumLines.Place(top + 1, bottom, BEFORE.size(), phases.size()))
                .write();
    }

    private void head() {
        sheet.value(0, 0, "Panel " + Cells.text(schedule.panel()));
        sheet.style(0, 0).bold().fontSize(14).set();
        for (int i = 0; i < schedule.head().size(); i++) {
            Fact fact = schedule.head().get(i);
            int row = 1 + i / FACTS_ABREAST;
            int column = i % FACTS_ABREAST * SECOND_FACT;
            sheet.value(row, column, fact.name());
            sheet.value(
                    row,
                    column + 3,
                    Cells.text((fact.value().isEmpty() ? "not stated" : fact.value())
                            + (fact.note().isEmpty() ? "" : " (" + fact.note() + ")")));
            sheet.style(row, column).bold().set();
        }
    }

    private void slot(int row, Schedule.Slot slot) {
        String phase = phase(slot);
        sheet.value(row, 0, slot.number());
        sheet.value(row, PHASE, phase);
        sheet.value(row, STATE, slot.state());
        if (slot.poles() > 0) {
            sheet.value(row, 3, Cells.text(slot.load()));
            sheet.value(row, 4, Cells.text(slot.name()));
            sheet.value(row, 5, CalculatedWorkbook.plain(slot.breakerAmps()));
            sheet.value(row, 6, slot.poles());
            sheet.value(row, POLE, slot.pole());
            sheet.value(row, RUNNING, CalculatedWorkbook.plain(slot.runningAmps()));
            sheet.value(row, VOLT_AMPS_PER_AMP, CalculatedWorkbook.plain(slot.voltAmpsPerAmp()));
            behind(row, slot);
        }
        for (int i = 0; i < phases.size(); i++) {
            String amps = CalculatedWorkbook.cell(row, RUNNING);
            boolean counts = phases.get(i).equals(phase) && slot.poles() > 0;
            workbook.formula(
                    sheet,
                    row,
                    BEFORE.size() + i,
                    "IF(AND(" + CalculatedWorkbook.cell(row, PHASE) + "=\"" + phases.get(i) + "\",ISNUMBER(" + amps
                            + "))," + amps + "*" + CalculatedWorkbook.cell(row, VOLT_AMPS_PER_AMP) + ",\"\")",
                    counts ? (Object) slot.voltAmps() : "");
        }
    }

    private void behind(int row, Schedule.Slot slot) {
        int on = BEFORE.size() + phases.size();
        slot.onSeconds()
                .ifPresentOrElse(seconds -> sheet.value(row, on, seconds), () -> sheet.value(row, on, slot.on()));
        List<String> texts = List.of(slot.control(), slot.emergency(), slot.wire());
        for (int i = 0; i < texts.size(); i++) {
            sheet.value(row, on + 1 + i, Cells.text(texts.get(i)));
        }
        sheet.value(row, on + 4, slot.continuousFactor());
        sheet.value(row, on + 5, Cells.text(slot.marks()));
    }

    private String phase(Schedule.Slot slot) {
        return schedule.rows().stream()
                .filter(row ->
                        row.left().number() == slot.number() || row.right().number() == slot.number())
                .findFirst()
                .orElseThrow()
                .phase();
    }
}
