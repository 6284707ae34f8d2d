package evenrise.solver.sample;

import evenrise.model.project.Contactor;
import evenrise.model.project.ContactorCategory;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Role;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedBy;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;

/** Contactors, racks, off delays and spare room of one panel's draft. */
final class Furnishing {
    private static final int MOST_BEHIND_ONE = 6;
    private static final int IN_ONE_RACK = 5;
    private static final double COOLING_SECONDS = 90;
    private static final List<Integer> CONTACTOR_AMPS = List.of(25, 32, 40, 63, 80, 100, 125, 160);
    private static final double RUNNING_SPARE_PERCENT = 5;

    private Furnishing() {}

    /** What goes together stays as one: the call amplifiers, and a panel's first group of amplifiers if it is whole. */
    static void contactors(PanelDraft draft) {
        List<LoadDraft> calls = draft.loads.stream()
                .filter(load -> load.kit == EquipmentKinds.CALL_AMPLIFIER)
                .toList();
        behindOne(calls);
        String first = draft.id + "-sound-1";
        behindOne(draft.loads.stream()
                .filter(load -> load.group.filter(first::equals).isPresent())
                .toList());
    }

    private static void behindOne(List<LoadDraft> loads) {
        for (int from = 0; from + 1 < loads.size(); from += MOST_BEHIND_ONE) {
            List<LoadDraft> together = loads.subList(from, Math.min(loads.size(), from + MOST_BEHIND_ONE));
            LoadDraft leader = together.get(0);
            double amps =
                    together.stream().mapToDouble(load -> load.runningAmps).sum();
            double peak = together.stream().mapToDouble(load -> load.peakAmps).sum();
            leader.switchedBy = SwitchedBy.CONTACTOR;
            leader.contactor = Optional.of(new Contactor(
                    ContactorCategory.AC_1,
                    CONTACTOR_AMPS.stream()
                            .filter(rated -> rated >= 1.25 * amps)
                            .findFirst()
                            .orElseThrow(),
                    OptionalDouble.of(Math.ceil(1.2 * peak / 100) * 100)));
            together.stream().skip(1).forEach(load -> load.behind(leader.id));
        }
    }

    static void racks(PanelDraft draft) {
        List<LoadDraft> mounted = draft.loads.stream()
                .filter(load -> load.kit.role() == Role.PROCESSING || load.kit.role() == Role.AMPLIFIER)
                .toList();
        for (int n = 0; n < mounted.size(); n++) {
            mounted.get(n).rack = Optional.of(draft.id + "-rack-" + (1 + n / IN_ONE_RACK));
        }
    }

    /** Projectors and spots cool where their board lets them. */
    static void offDelays(PanelDraft draft, BoardKinds kinds, int panel) {
        if (kinds.hold(panel).off() != OffTiming.EACH) {
            return;
        }
        draft.loads.stream()
                .filter(load -> load.switched && EquipmentKinds.COOLS.contains(load.kit))
                .forEach(load -> load.offAfterSeconds = COOLING_SECONDS);
    }

    /** Half of what the layout leaves free. */
    static Spare spare(Panel panel, PhaseSystem system, List<LoadDraft> loads) {
        SlotLayout layout = new SlotLayout(panel, system);
        Set<Integer> taken = new HashSet<>(panel.reservedSlots());
        loads.forEach(load -> taken.addAll(layout.span(load.slot, load.poles)));
        List<Integer> free = new ArrayList<>(IntStream.rangeClosed(1, panel.slots())
                .filter(slot -> !taken.contains(slot))
                .boxed()
                .toList());
        long switched = free.stream()
                .filter(slot ->
                        panel.switchedSlots().map(slots -> slots.contains(slot)).orElse(true))
                .count();
        return Spare.builder()
                .slots(free.size() / 2)
                .switchedSlots((int) switched / 2)
                .poles(1)
                .fits(free.size() / 2)
                .runningPercent(RUNNING_SPARE_PERCENT)
                .build();
    }
}
