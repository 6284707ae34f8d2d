package evenrise.solver.document;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Words;
import evenrise.model.plan.Review;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
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
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Draws up the schedule of each panel. */
final class Schedules {
    /** From which frequency on conductors are called by letters alone, as practice in the United States is. */
    private static final double LETTERS_FROM_HERTZ = 55;

    private final Layout layout;
    private final SheetWords words;
    private final SwitchingWords switching;
    private final PanelHead heads;
    private final Map<String, OnEmergency> effects = new HashMap<>();

    Schedules(Layout layout, Review review, SheetWords words) {
        this.layout = layout;
        this.words = words;
        this.switching = new SwitchingWords(words);
        this.heads = new PanelHead(layout, review, words);
        layout.project().shutdownGroups().forEach(group -> effects.put(group.id(), group.onEmergency()));
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
                slots.putIfAbsent(each.slots().get(k), slot(panel, each, k));
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
        return new Schedule(
                panel.id(),
                heads.fedFrom(panel),
                heads.of(panel),
                geometry.phases().stream().sorted().map(this::head).toList(),
                isTwoSided,
                layout.in(panel).stream().anyMatch(each -> cable(each.load()).isPresent()),
                rows,
                new LoadSummary(layout, panel, words).lines(figures),
                totals(panel, figures),
                PanelSums.of(layout, panel, figures));
    }

    private Schedule.PhaseHead head(Phase phase) {
        boolean isByLetters = layout.project().supply().frequencyHertz() >= LETTERS_FROM_HERTZ;
        return new Schedule.PhaseHead(
                phase.name(), isByLetters ? phase.name() : "L" + (phase.ordinal() + 1) + " (" + phase + ")");
    }

    private static Optional<Cable> cable(Load load) {
        return load.circuit().flatMap(Circuit::cable);
    }

    private Schedule.Slot slot(Panel panel, Placement each, int pole) {
        Load load = each.load();
        Point point = layout.distribution().of(panel);
        boolean feedsNothing = !load.switched() && load.runningAmps() == 0 && load.idleAmps() == 0;
        return new Schedule.Slot(
                each.slots().get(pole),
                pole > 0 ? "pole" : feedsNothing ? "spare" : "load",
                each.id(),
                Plain.text(load.name(), 120),
                pole + 1,
                each.slots().size(),
                load.breakerAmps(),
                load.runningAmps(),
                LoadSummary.onEachPole(point, load, load.runningAmps()),
                PanelSums.voltAmpsPerAmp(point, load),
                PanelSums.continuousFactor(layout, panel, load),
                each.onSeconds(),
                feedsNothing ? "" : on(each),
                pole == 0 ? control(each) : "",
                pole == 0 ? emergency(each) : "",
                pole == 0 ? cable(load).map(CableWords::size).map(words::number).orElse("") : "",
                marks(each),
                pole > 0 ? words.say("slot.pole", pole + 1, each.slots().size()) : "");
    }

    private String control(Placement each) {
        PlannedCircuit circuit = PlannedCircuit.of(layout, each);
        return circuit.isSwitched() ? Plain.text(switching.shortControl(circuit), 60) : "";
    }

    /** What has no output neither drops nor holds by any. */
    private String emergency(Placement each) {
        PlannedCircuit circuit = PlannedCircuit.of(layout, each);
        return circuit.isSwitched() && !circuit.isWithoutOutput()
                ? words.say(
                        "slot." + Words.word(circuit.group().map(effects::get).orElse(OnEmergency.HOLD)))
                : "";
    }

    private String on(Placement each) {
        if (each.isSequenced()) {
            return words.number(Unrounded.seconds(each.onSeconds().getAsDouble()));
        }
        return words.say(each.load().switched() ? "slot.no-output" : "slot.always");
    }

    /** Contactor and rack, where there are any. */
    private String marks(Placement each) {
        PlannedCircuit circuit = PlannedCircuit.of(layout, each);
        return Stream.concat(
                        Stream.of(switching.contactor(circuit)),
                        circuit.rack().map(rack -> words.say("slot.rack", rack)).stream())
                .filter(mark -> !mark.isEmpty())
                .map(mark -> Plain.text(mark, 120))
                .collect(Collectors.joining("; "));
    }

    private static Schedule.Slot free(Panel panel, int slot) {
        return Schedule.Slot.free(slot, panel.reservedSlots().contains(slot) ? "reserved" : "space");
    }

    private List<Fact> totals(Panel panel, NodeFigures figures) {
        List<Fact> totals = new ArrayList<>();
        double allowed = panel.continuousAmpsUnder(layout.project().supply());
        double most = 0;
        Map<Phase, Double> phasors = figures.phasorAmps();
        for (Phase phase : layout.index().slotsOf(panel).phases()) {
            double amps = figures.runningAmps().get(phase);
            most = Math.max(most, amps);
            totals.add(new Fact(
                    words.say("total.phase", phase),
                    words.number(HUNDREDTHS.amps(amps)),
                    words.say("total.left", hundredths(allowed - amps), hundredths(phasors.get(phase)))
                            + atFullUse(panel, phase)));
        }
        totals.add(new Fact(
                words.say("total.imbalance"), words.number(HUNDREDTHS.percent(figures.imbalancePercent())), ""));
        totals.add(new Fact(words.say("total.neutral"), words.number(HUNDREDTHS.amps(figures.neutralAmps())), ""));
        spare(panel, allowed - most, allowed, totals);
        return totals;
    }

    /** What scenes leave out stands beside them. */
    private String atFullUse(Panel panel, Phase phase) {
        return layout.project().scenes().isEmpty()
                ? ""
                : words.say(
                        "total.full-use",
                        hundredths(layout.fullUse()
                                .running(layout.distribution().of(panel))
                                .byPhase()
                                .get(phase)));
    }

    private String hundredths(double amps) {
        return words.number(Decimals.fixed(amps, 2));
    }

    private void spare(Panel panel, double leftAmps, double allowedAmps, List<Fact> totals) {
        FreeSlots free = FreeSlots.of(panel, layout);
        Optional<Spare> wanted = layout.project().spareIn(panel);
        List<String> notes = new ArrayList<>();
        if (panel.switchedSlots().isPresent()) {
            notes.add(words.say("total.for-switched", free.forSwitched()));
        }
        wanted.ifPresent(spare -> {
            notes.add(words.say("total.to-be-left", spare.slots()));
            if (spare.switchedSlots() > 0) {
                notes.add(words.say("total.for-switched", spare.switchedSlots()));
            }
            if (spare.fits() > 0) {
                notes.add(words.say(
                        spare.poles() == 1 ? "total.room-1" : "total.room",
                        free.breakers(spare.poles()),
                        spare.poles(),
                        spare.fits()));
            }
        });
        totals.add(new Fact(words.say("total.spaces"), String.valueOf(free.count()), String.join(", ", notes)));
        wanted.filter(spare -> spare.runningPercent() > 0)
                .ifPresent(spare -> totals.add(new Fact(
                        words.say("total.current-left"),
                        words.number(TENTHS.percent(100 * leftAmps / allowedAmps)),
                        words.say("total.current-to-be-left", words.number(Unrounded.rated(spare.runningPercent()))))));
    }
}
