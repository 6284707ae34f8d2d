package evenrise.model.rules;

import evenrise.model.project.Load;
import evenrise.model.project.SwitchedBy;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** A load with a breaker that is switched sits only in slots that take a switched breaker. */
final class SwitchedSlotRule implements Rule {
    @Override
    public String id() {
        return "switched-slot";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        Map<String, Set<Integer>> allowed = new HashMap<>();
        layout.project()
                .panels()
                .forEach(panel -> panel.switchedSlots().ifPresent(slots -> allowed.put(panel.id(), Set.copyOf(slots))));
        for (Placement placement : layout.placements()) {
            Set<Integer> switched = allowed.get(placement.assignment().panel());
            if (needsOne(placement.load()) && switched != null) {
                for (int slot : placement.slots()) {
                    if (!switched.contains(slot)) {
                        broken.add(message(placement, slot, switched));
                    }
                }
            }
        }
        return broken;
    }

    /** Behind a contactor any breaker does. */
    private static boolean needsOne(Load load) {
        return load.switched() && load.comesWith().isEmpty() && load.switchedBy() == SwitchedBy.BREAKER;
    }

    private static String message(Placement placement, int slot, Set<Integer> allowed) {
        return "load " + Say.quoted(placement.id()) + " is switched, but slot " + slot + " of panel "
                + Say.panelOf(placement) + " takes no switched breaker; "
                + (allowed.isEmpty() ? "none does" : "slots " + Say.listed(new TreeSet<>(allowed)) + " do")
                + ". Maybe swap it with an unswitched load, or move it to another panel.";
    }
}
