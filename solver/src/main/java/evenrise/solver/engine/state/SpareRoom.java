package evenrise.solver.engine.state;

import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import java.util.List;
import java.util.Optional;

/** Slots that panels are to leave free, looked at again wherever breakers come or go. */
final class SpareRoom {
    private final CompiledProject compiled;
    private final int[] loadInSlot;
    private final Spare[] wanted;
    /** By panel and slot from 1, whether it takes a switched breaker. */
    private final boolean[][] takesSwitched;

    private final long[] chargeOf;
    private final IntBag stale;
    private final IndexSet shortPanels;
    private final boolean[] left;
    private long charge;

    SpareRoom(CompiledProject compiled, int[] loadInSlot) {
        this.compiled = compiled;
        this.loadInSlot = loadInSlot;
        Project project = compiled.project;
        wanted = new Spare[compiled.panelCount];
        takesSwitched = new boolean[compiled.panelCount][];
        int mostSlots = 0;
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            Panel given = project.panels().get(panel);
            Optional<Spare> spare = project.spareIn(given).filter(SpareRoom::asksForSlots);
            if (spare.isPresent()) {
                wanted[panel] = spare.get();
                takesSwitched[panel] = new boolean[given.slots() + 1];
                Optional<List<Integer>> switched = given.switchedSlots();
                for (int slot = 1; slot <= given.slots(); slot++) {
                    int each = slot;
                    takesSwitched[panel][slot] =
                            switched.map(slots -> slots.contains(each)).orElse(true);
                }
            }
            mostSlots = Math.max(mostSlots, given.slots());
        }
        chargeOf = new long[compiled.panelCount];
        stale = new IntBag(compiled.panelCount);
        shortPanels = new IndexSet(compiled.panelCount);
        left = new boolean[mostSlots + 1];
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            touch(panel);
        }
        settle();
    }

    private static boolean asksForSlots(Spare spare) {
        return spare.slots() > 0 || spare.switchedSlots() > 0 || spare.fits() > 0;
    }

    /** Breakers of a panel have come or gone. */
    void touch(int panel) {
        if (wanted[panel] != null) {
            stale.add(panel);
        }
    }

    void settle() {
        for (int i = 0; i < stale.size(); i++) {
            int panel = stale.get(i);
            long now = charge(panel);
            charge += now - chargeOf[panel];
            chargeOf[panel] = now;
            shortPanels.set(panel, now > 0);
        }
        stale.clear();
    }

    private long charge(int panel) {
        Spare spare = wanted[panel];
        int slots = compiled.firstSlot[panel + 1] - compiled.firstSlot[panel];
        int free = 0;
        int forSwitched = 0;
        for (int slot = 1; slot <= slots; slot++) {
            left[slot] = !compiled.reserved[compiled.firstSlot[panel] + slot - 1]
                    && loadInSlot[compiled.firstSlot[panel] + slot - 1] == CompiledProject.NONE;
            if (left[slot]) {
                free++;
                forSwitched += takesSwitched[panel][slot] ? 1 : 0;
            }
        }
        long places = Math.max(0, spare.slots() - free) + Math.max(0, spare.switchedSlots() - forSwitched);
        if (spare.fits() > 0) {
            places += Math.max(0, spare.fits() - fitting(panel, spare.poles(), slots));
        }
        return places * Charges.PLACE;
    }

    /** Breakers of so many poles that fit at once; of equal lengths it is best to begin with the lowest slot. */
    private int fitting(int panel, int poles, int slots) {
        int count = 0;
        for (int slot = 1; slot <= slots; slot++) {
            Place place = poles <= compiled.phaseCount ? compiled.placeAt[panel][slot][poles] : null;
            if (place != null && isLeft(panel, place)) {
                for (int taken : place.slots()) {
                    left[taken - compiled.firstSlot[panel] + 1] = false;
                }
                count++;
            }
        }
        return count;
    }

    private boolean isLeft(int panel, Place place) {
        for (int slot : place.slots()) {
            if (!left[slot - compiled.firstSlot[panel] + 1]) {
                return false;
            }
        }
        return true;
    }

    /** Whether a panel leaves less than it is to. */
    boolean isShort(int panel) {
        return chargeOf[panel] > 0;
    }

    IndexSet shortPanels() {
        return shortPanels;
    }

    long charge() {
        return charge;
    }
}
