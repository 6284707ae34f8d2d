package evenrise.solver.tidy;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Spare;
import evenrise.model.rules.Layout;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Moves breakers inside each panel so that its free slots lie together. */
final class GatheredSlots {
    private GatheredSlots() {}

    /** Panels where breakers overlap stay as they are: nobody knows there who has the slot. */
    static Plan of(Layout layout, List<List<String>> alike, Predicate<Load> isFree) {
        Map<String, Integer> sets = new HashMap<>();
        for (int set = 0; set < alike.size(); set++) {
            for (String load : alike.get(set)) {
                sets.put(load, set);
            }
        }
        boolean countsRackRows = layout.project().objective().rackRows() > 0;
        Map<String, Integer> moved = new HashMap<>();
        for (Panel panel : layout.project().panels()) {
            PanelSlots.of(panel, layout, sets, isFree).ifPresent(slots -> {
                int wanted = layout.project().spareIn(panel).map(Spare::fits).orElse(0);
                new SlotDescent(slots, new SlotWorth(slots, countsRackRows, wanted)).run();
                for (int breaker = 0; breaker < slots.breakers.size(); breaker++) {
                    moved.put(slots.breakers.get(breaker).load().id(), slots.start(breaker));
                }
            });
        }
        List<Assignment> assignments = layout.plan().assignments().stream()
                .map(each -> moved.containsKey(each.load()) ? each.withSlot(moved.get(each.load())) : each)
                .toList();
        return layout.plan().withAssignments(assignments);
    }
}
