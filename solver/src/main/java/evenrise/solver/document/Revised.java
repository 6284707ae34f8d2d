package evenrise.solver.document;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What of a plan is another than in an earlier one, for who marks it.
 *
 * @param loads that are new or changed
 * @param boards that are new or changed
 * @param slots panel and number of each that another breaker, or none, sits in
 * @param curves current of each node by the earlier plan
 * @param slopes the figures that moved, as parts of their limits
 */
public record Revised(
        Set<String> loads, Set<String> boards, Set<String> slots, List<NodeCurves> curves, List<Slope> slopes) {
    /** Where there is nothing to hold it against. */
    static final Revised NOT = new Revised(Set.of(), Set.of(), Set.of(), List.of(), List.of());

    public Revised {
        loads = Set.copyOf(loads);
        boards = Set.copyOf(boards);
        slots = Set.copyOf(slots);
        curves = List.copyOf(curves);
        slopes = List.copyOf(slopes);
    }

    static Revised of(PlanState before, PlanState now) {
        List<ChangedCell> cells = now.tables().changes().orElseThrow().cells().rows();
        return new Revised(
                ids(cells, ChangedCell.LOAD),
                ids(cells, ChangedCell.BOARD),
                slots(before, now),
                new Envelopes(before.layout()).ofAllNodes(),
                Slope.of(before, now));
    }

    private static Set<String> ids(List<ChangedCell> cells, String what) {
        return cells.stream()
                .filter(each -> each.isOf(what))
                .map(ChangedCell::id)
                .collect(Collectors.toSet());
    }

    private static Set<String> slots(PlanState before, PlanState now) {
        Map<String, String> had = occupants(before);
        Map<String, String> has = occupants(now);
        Set<String> all = new HashSet<>(had.keySet());
        all.addAll(has.keySet());
        all.removeIf(slot -> had.getOrDefault(slot, "").equals(has.getOrDefault(slot, "")));
        return all;
    }

    private static Map<String, String> occupants(PlanState state) {
        Map<String, String> loads = new HashMap<>();
        for (Schedule schedule : state.schedules()) {
            for (Schedule.Row row : schedule.rows()) {
                for (Schedule.Slot slot : List.of(row.left(), row.right())) {
                    loads.put(key(schedule.panel(), slot.number()), slot.load());
                }
            }
        }
        return loads;
    }

    private static String key(String panel, int slot) {
        return panel + " " + slot;
    }

    /** Whether there is an earlier plan. */
    public boolean isAny() {
        return !curves.isEmpty();
    }

    public boolean load(String id) {
        return loads.contains(id);
    }

    public boolean board(String id) {
        return boards.contains(id);
    }

    /** Whether the slot, or the load whose breaker begins there, is to be marked. */
    public boolean slot(String panel, Schedule.Slot slot) {
        return slots.contains(key(panel, slot.number())) || slot.isFirst() && loads.contains(slot.load());
    }

    /** By the earlier plan, where it had that node and that command. */
    public Optional<NodeCurves> before(NodeCurves now) {
        return curves.stream()
                .filter(each -> each.node().equals(now.node()) && each.system().equals(now.system()))
                .findFirst();
    }
}
