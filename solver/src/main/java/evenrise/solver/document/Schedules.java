package evenrise.solver.document;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SlotNumbering;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Draws up the schedule of each panel. */
final class Schedules {
    private final Layout layout;

    Schedules(Layout layout) {
        this.layout = layout;
    }

    List<Schedule> all() {
        List<Schedule> schedules = new ArrayList<>();
        for (int i = 0; i < layout.project().panels().size(); i++) {
            schedules.add(of(layout.project().panels().get(i), layout.nodes().get(i + 1)));
        }
        return schedules;
    }

    private Schedule of(Panel panel, NodeFigures figures) {
        Map<Integer, Schedule.Slot> slots = new HashMap<>();
        for (Placement each : layout.in(panel)) {
            for (int k = 0; k < each.slots().size(); k++) {
                slots.putIfAbsent(each.slots().get(k), slot(each, k));
            }
        }
        SlotLayout geometry = layout.index().slotsOf(panel);
        boolean isTwoSided = panel.numbering() == SlotNumbering.ALTERNATING;
        List<Schedule.Row> rows = new ArrayList<>();
        for (int slot = 1; slot <= panel.slots(); slot += isTwoSided ? 2 : 1) {
            Schedule.Slot right = isTwoSided && slot + 1 <= panel.slots()
                    ? slots.getOrDefault(slot + 1, free(panel, slot + 1))
                    : Schedule.Slot.NONE;
            Schedule.Slot left = slots.getOrDefault(slot, free(panel, slot));
            rows.add(new Schedule.Row(geometry.phase(slot).name(), left, right));
        }
        return new Schedule(panel.id(), rating(panel), isTwoSided, rows, totals(panel, figures, slots.size()));
    }

    private static Schedule.Slot slot(Placement each, int pole) {
        return new Schedule.Slot(
                each.slots().get(pole),
                pole == 0 ? "load" : "pole",
                each.id(),
                pole == 0 ? Plain.text(each.load().name(), 120) : "",
                pole + 1,
                each.slots().size(),
                each.load().breakerAmps(),
                each.load().runningAmps(),
                each.onSeconds());
    }

    private static Schedule.Slot free(Panel panel, int slot) {
        return Schedule.Slot.free(slot, panel.reservedSlots().contains(slot) ? "reserved" : "spare");
    }

    private String rating(Panel panel) {
        return String.format(
                Locale.ROOT,
                "%s, %d slots, %s, neutral %s",
                Unrounded.amps(panel.ratedAmps()),
                panel.slots(),
                Cover.system(layout.project().supply()),
                Unrounded.amps(panel.neutralAmps()));
    }

    private List<Fact> totals(Panel panel, NodeFigures figures, int taken) {
        List<Fact> totals = new ArrayList<>();
        double allowed = panel.continuousAmpsUnder(layout.project().supply());
        for (Phase phase : layout.index().slotsOf(panel).phases()) {
            double amps = figures.runningAmps().get(phase);
            totals.add(new Fact(
                    "Phase " + phase,
                    String.format(Locale.ROOT, "%.2f A", amps),
                    String.format(
                            Locale.ROOT,
                            "%.2f A to spare, %.2f A by phasors",
                            allowed - amps,
                            figures.phasorAmps().get(phase))));
        }
        totals.add(new Fact("Imbalance", String.format(Locale.ROOT, "%.2f %%", figures.imbalancePercent()), ""));
        totals.add(new Fact("Neutral", String.format(Locale.ROOT, "%.2f A", figures.neutralAmps()), ""));
        int spare = panel.slots() - taken - panel.reservedSlots().size();
        totals.add(new Fact("Spare slots", String.valueOf(spare), ""));
        return totals;
    }
}
