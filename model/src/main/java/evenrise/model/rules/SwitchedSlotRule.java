package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
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
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        Map<String, Set<Integer>> allowed = new HashMap<>();
        layout.project()
                .panels()
                .forEach(panel -> panel.switchedSlots().ifPresent(slots -> allowed.put(panel.id(), Set.copyOf(slots))));
        for (Placement placement : layout.placements()) {
            Set<Integer> switched = allowed.get(placement.assignment().panel());
            if (needsOne(placement.load()) && switched != null) {
                for (int slot : placement.slots()) {
                    if (!switched.contains(slot)) {
                        broken.add(refused(placement, slot, switched));
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

    private static BrokenRule refused(Placement placement, int slot, Set<Integer> allowed) {
        return Broken.by(BrokenKind.UNSWITCHED_SLOT)
                .load(placement.id())
                .panel(placement.assignment().panel())
                .word("slot", slot)
                .word(
                        "which",
                        allowed.isEmpty() ? "none does" : "slots " + RuleWords.listed(new TreeSet<>(allowed)) + " do")
                .at("panel " + placement.assignment().panel() + " slot " + slot)
                .build();
    }
}
