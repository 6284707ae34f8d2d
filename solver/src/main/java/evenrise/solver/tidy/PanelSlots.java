package evenrise.solver.tidy;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Which breaker of one panel lies in which slots, and exchanges of what lies there. */
final class PanelSlots {
    static final int FREE = -1;
    private static final int RESERVED = -2;

    /**
     * One breaker.
     *
     * @param isFree whether it may move
     * @param needsSwitched whether its slots must take a switched breaker
     * @param set of alike loads; that of no other where it has none
     * @param output that switches it, rising as people read outputs
     */
    record Breaker(Load load, int first, boolean isFree, boolean needsSwitched, int set, long output) {}

    final SlotGeometry geometry;
    final List<Breaker> breakers = new ArrayList<>();
    final boolean[] takesSwitched;
    /** By slot: number of the breaker there, {@link #FREE}, or another negative number. */
    final int[] taken;

    private int[] starts;

    private PanelSlots(Panel panel, Layout layout, Map<String, Integer> sets, Predicate<Load> isFree) {
        this.geometry = new SlotGeometry(panel, layout.index().slotsOf(panel));
        this.takesSwitched = new boolean[panel.slots() + 1];
        Optional<Set<Integer>> switched = panel.switchedSlots().map(Set::copyOf);
        for (int slot = 1; slot <= panel.slots(); slot++) {
            takesSwitched[slot] = switched.isEmpty() || switched.get().contains(slot);
        }
        this.taken = new int[panel.slots() + 1];
        Arrays.fill(taken, FREE);
        PlaceOrder order = new PlaceOrder(layout.project());
        int alone = sets.size();
        for (Placement each : layout.in(panel)) {
            breakers.add(breaker(each, order, isFree, sets.getOrDefault(each.id(), alone + breakers.size())));
        }
        panel.reservedSlots().stream().filter(slot -> slot <= panel.slots()).forEach(slot -> taken[slot] = RESERVED);
        this.starts = breakers.stream().mapToInt(Breaker::first).toArray();
    }

    /** Empty where slots are taken twice. */
    static Optional<PanelSlots> of(Panel panel, Layout layout, Map<String, Integer> sets, Predicate<Load> isFree) {
        PanelSlots slots = new PanelSlots(panel, layout, sets, isFree);
        return slots.seatAll() ? Optional.of(slots) : Optional.empty();
    }

    private static Breaker breaker(Placement placement, PlaceOrder order, Predicate<Load> isFree, int set) {
        Load load = placement.load();
        Assignment place = placement.assignment();
        boolean needsSwitched =
                load.switched() && load.comesWith().isEmpty() && load.switchedBy() == SwitchedBy.BREAKER;
        return new Breaker(load, place.slot(), isFree.test(load), needsSwitched, set, order.output(place));
    }

    /** Lays the breakers as {@link #starts} has said. */
    void seat(int[] starts) {
        for (int slot = 1; slot < taken.length; slot++) {
            taken[slot] = taken[slot] == RESERVED ? RESERVED : FREE;
        }
        this.starts = starts.clone();
        seatAll();
    }

    private boolean seatAll() {
        for (int breaker = 0; breaker < breakers.size(); breaker++) {
            for (int slot : span(breaker)) {
                if (taken[slot] != FREE) {
                    return false;
                }
                taken[slot] = breaker;
            }
        }
        return true;
    }

    int[] span(int breaker) {
        return geometry.span(starts[breaker], breakers.get(breaker).load().poles());
    }

    int start(int breaker) {
        return starts[breaker];
    }

    /**
     * Whether what lies in the slots of a breaker and what lies in as many from {@code slot} can change places and touch
     * the phases that they touch now.
     */
    boolean canExchange(int breaker, int slot) {
        int poles = breakers.get(breaker).load().poles();
        int[] here = span(breaker);
        int[] there = geometry.span(slot, poles);
        if (there.length == 0 || there[0] == here[0] || !geometry.samePhases(here[0], slot, poles)) {
            return false;
        }
        Set<Integer> others = new HashSet<>();
        for (int pole = 0; pole < poles; pole++) {
            int other = taken[there[pole]];
            if (other == RESERVED || other == breaker || !mayLie(breaker, there[pole])) {
                return false;
            }
            if (other != FREE) {
                if (!mayLie(other, here[pole])) {
                    return false;
                }
                others.add(other);
            }
        }
        return others.stream().allMatch(other -> liesWithin(other, there));
    }

    private boolean mayLie(int breaker, int slot) {
        Breaker which = breakers.get(breaker);
        return which.isFree() && (!which.needsSwitched() || takesSwitched[slot]);
    }

    private boolean liesWithin(int breaker, int[] slots) {
        return Arrays.stream(span(breaker))
                .allMatch(slot -> Arrays.stream(slots).anyMatch(each -> each == slot));
    }

    /** Exchanges what lies in the slots of a breaker with what lies in as many from {@code slot}; again undoes it. */
    void exchange(int breaker, int slot) {
        int[] here = span(breaker);
        int[] there = geometry.span(slot, here.length);
        for (int pole = here.length - 1; pole >= 0; pole--) {
            int other = taken[there[pole]];
            taken[there[pole]] = breaker;
            taken[here[pole]] = other;
            if (other != FREE) {
                starts[other] = here[pole];
            }
        }
        starts[breaker] = slot;
    }

    /** First slot of each breaker. */
    int[] starts() {
        return starts.clone();
    }
}
