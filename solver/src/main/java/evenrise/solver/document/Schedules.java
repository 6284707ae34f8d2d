package evenrise.solver.document;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Spare;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.FreeSlots;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
        return new Schedule(panel.id(), rating(panel), isTwoSided, rows, totals(panel, figures));
    }

    private Schedule.Slot slot(Placement each, int pole) {
        return new Schedule.Slot(
                each.slots().get(pole),
                pole == 0 ? "load" : "pole",
                each.id(),
                pole == 0 ? Plain.text(each.load().name(), 120) : "",
                pole + 1,
                each.slots().size(),
                each.load().breakerAmps(),
                each.load().runningAmps(),
                on(each),
                pole == 0 ? marks(each) : "");
    }

    private static String on(Placement each) {
        if (each.isSequenced()) {
            return Unrounded.seconds(each.onSeconds().getAsDouble());
        }
        return each.load().switched() ? "no output" : "always";
    }

    /** Contactor and rack, where there are any. */
    private String marks(Placement each) {
        PlannedCircuit circuit = PlannedCircuit.of(layout, each);
        return Stream.concat(Stream.of(circuit.contactor()), circuit.rack().map(rack -> "rack " + rack).stream())
                .filter(words -> !words.isEmpty())
                .map(words -> Plain.text(words, 120))
                .collect(Collectors.joining("; "));
    }

    private static Schedule.Slot free(Panel panel, int slot) {
        return Schedule.Slot.free(slot, panel.reservedSlots().contains(slot) ? "reserved" : "spare");
    }

    private String rating(Panel panel) {
        Point point = layout.distribution().of(panel);
        return String.format(
                Locale.ROOT,
                "%s%s, %d slots, %s, neutral %s",
                DistributionRow.feeding(layout, point).map(each -> each + "; ").orElse(""),
                Unrounded.amps(panel.ratedAmps()),
                panel.slots(),
                DistributionRow.system(layout, point),
                Unrounded.amps(panel.neutralAmps()));
    }

    private List<Fact> totals(Panel panel, NodeFigures figures) {
        List<Fact> totals = new ArrayList<>();
        double allowed = panel.continuousAmpsUnder(layout.project().supply());
        double most = 0;
        for (Phase phase : layout.index().slotsOf(panel).phases()) {
            double amps = figures.runningAmps().get(phase);
            most = Math.max(most, amps);
            totals.add(new Fact(
                    "Phase " + phase,
                    HUNDREDTHS.amps(amps),
                    String.format(
                            Locale.ROOT,
                            "%.2f A to spare, %.2f A by phasors%s",
                            allowed - amps,
                            figures.phasorAmps().get(phase),
                            atFullUse(panel, phase))));
        }
        totals.add(new Fact("Imbalance", HUNDREDTHS.percent(figures.imbalancePercent()), ""));
        totals.add(new Fact("Neutral", HUNDREDTHS.amps(figures.neutralAmps()), ""));
        spare(panel, allowed - most, allowed, totals);
        return totals;
    }

    /** What scenes leave out stands beside them. */
    private String atFullUse(Panel panel, Phase phase) {
        return layout.project().scenes().isEmpty()
                ? ""
                : String.format(
                        Locale.ROOT,
                        ", %.2f A at full use of every load",
                        layout.fullUse()
                                .running(layout.distribution().of(panel))
                                .byPhase()
                                .get(phase));
    }

    private void spare(Panel panel, double leftAmps, double allowedAmps, List<Fact> totals) {
        FreeSlots free = FreeSlots.of(panel, layout);
        Optional<Spare> wanted = layout.project().spareIn(panel);
        List<String> notes = new ArrayList<>();
        if (panel.switchedSlots().isPresent()) {
            notes.add(free.forSwitched() + " for switched breakers");
        }
        wanted.ifPresent(spare -> {
            notes.add("to be left: " + spare.slots());
            if (spare.switchedSlots() > 0) {
                notes.add(spare.switchedSlots() + " for switched breakers");
            }
            if (spare.fits() > 0) {
                notes.add("room for " + free.breakers(spare.poles()) + " more of "
                        + Phrase.counted(spare.poles(), "pole") + ", " + spare.fits() + " to be left");
            }
        });
        totals.add(new Fact("Spare slots", String.valueOf(free.count()), String.join(", ", notes)));
        wanted.filter(spare -> spare.runningPercent() > 0)
                .ifPresent(spare -> totals.add(new Fact(
                        "Current left",
                        TENTHS.percent(100 * leftAmps / allowedAmps),
                        "of the allowed current on the phase that runs highest; to be left: "
                                + Unrounded.rated(spare.runningPercent()) + " %")));
    }
}
