package evenrise.model.rules;

import evenrise.model.project.SlotLayout;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * How far the loads of each rack are spread, summed over racks.
 *
 * @param panels beyond the first
 * @param boards beyond the first, those that the plan names
 * @param rows of a panel between the rack's first and last that none of its loads takes
 */
record RackSpread(int panels, int boards, int rows) {
    /** Empty where no load names a rack. */
    static Optional<RackSpread> of(Layout layout) {
        if (layout.project().loads().stream().allMatch(load -> load.rack().isEmpty())) {
            return Optional.empty();
        }
        Map<String, Set<String>> panels = new HashMap<>();
        Map<String, Set<String>> boards = new HashMap<>();
        Map<Map.Entry<String, String>, TreeSet<Integer>> rows = new HashMap<>();
        for (Placement each : layout.placements()) {
            if (each.load().rack().isPresent() && each.panel().isPresent()) {
                String rack = each.load().rack().get();
                String panel = each.panel().get().id();
                SlotLayout slots = layout.index().slotsOf(each.panel().get());
                put(panels, rack, panel);
                each.assignment().board().ifPresent(board -> put(boards, rack, board));
                each.slots()
                        .forEach(slot -> rows.computeIfAbsent(Map.entry(rack, panel), any -> new TreeSet<>())
                                .add(slots.row(slot)));
            }
        }
        int between = rows.values().stream()
                .mapToInt(taken -> taken.last() - taken.first() + 1 - taken.size())
                .sum();
        return Optional.of(new RackSpread(beyondFirst(panels.values()), beyondFirst(boards.values()), between));
    }

    private static void put(Map<String, Set<String>> sets, String rack, String name) {
        sets.computeIfAbsent(rack, any -> new HashSet<>()).add(name);
    }

    private static int beyondFirst(Collection<Set<String>> sets) {
        return sets.stream().mapToInt(each -> each.size() - 1).sum();
    }
}
