package evenrise.model.rules;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Slots of a panel that no breaker takes and that are not reserved. */
public final class FreeSlots {
    private final Panel panel;
    private final SlotLayout slots;
    private final TreeSet<Integer> free = new TreeSet<>();
    private final Set<Integer> taken = new HashSet<>();

    private FreeSlots(Panel panel, Layout layout) {
        this.panel = panel;
        this.slots = layout.index().slotsOf(panel);
        for (int slot = 1; slot <= panel.slots(); slot++) {
            free.add(slot);
        }
        panel.reservedSlots().forEach(free::remove);
        layout.in(panel).forEach(each -> taken.addAll(each.slots()));
        free.removeAll(taken);
    }

    public static FreeSlots of(Panel panel, Layout layout) {
        return new FreeSlots(panel, layout);
    }

    /** Slots that some breaker takes. */
    public int taken() {
        return taken.size();
    }

    public int count() {
        return free.size();
    }

    /** Those that take a switched breaker. */
    public int forSwitched() {
        return panel.switchedSlots()
                .map(Set::copyOf)
                .map(switched -> (int) free.stream().filter(switched::contains).count())
                .orElse(free.size());
    }

    /**
     * How many more breakers of so many poles fit at once: of equal lengths it is best to begin with the lowest slot, since
     * whatever else holds that slot or leaves it empty leaves no more room above.
     */
    public int breakers(int poles) {
        Set<Integer> left = new HashSet<>(free);
        int count = 0;
        for (int slot : free) {
            List<Integer> span = slots.span(slot, poles);
            Set<Phase> phases = new HashSet<>();
            span.forEach(each -> phases.add(slots.phase(each)));
            if (!span.isEmpty() && left.containsAll(span) && phases.size() == poles) {
                span.forEach(left::remove);
                count++;
            }
        }
        return count;
    }
}
