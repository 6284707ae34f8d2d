package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IntBag;
import evenrise.solver.engine.state.NodeCurrents;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** Finds spots in a panel for loads that move in, counting as free what others leave in the same change. */
final class SpotFinder {
    private final PlanSums sums;
    private final CompiledProject compiled;
    private final IntBag left;
    private final IntBag taken;

    SpotFinder(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
        left = new IntBag(compiled.slotCount());
        taken = new IntBag(compiled.slotCount());
    }

    void clear() {
        left.clear();
        taken.clear();
    }

    /** Counts as free what these loads will leave, going to a board that does not reach their panels. */
    void leaveFor(int[] loads, int board) {
        for (int load : loads) {
            Place place = sums.placeOf(load);
            if (place != null && !compiled.reach[board].get(place.panel())) {
                for (int each : compiled.bundle[load]) {
                    if (sums.placeOf(each) != null) {
                        leave(sums.placeOf(each));
                    }
                }
            }
        }
    }

    /** Counts a place as free. */
    void leave(Place place) {
        for (int slot : place.slots()) {
            left.add(slot);
        }
    }

    /**
     * Finds a spot in a board's panel for each load whose own the board does not reach, and for those behind its
     * contactor; false where one is missing.
     */
    boolean settle(int[] loads, int board, SplittableRandom random, DraftMove draft) {
        for (int poles = compiled.phaseCount; poles >= 1; poles--) {
            for (int load : loads) {
                Place place = sums.placeOf(load);
                if (place == null || !compiled.reach[board].get(place.panel())) {
                    int panel = panelFor(load, board);
                    for (int each : compiled.bundle[load]) {
                        if (compiled.poles[each] == poles) {
                            Place taken = take(each, panel, random);
                            if (taken == null) {
                                return false;
                            }
                            draft.place(each, taken);
                        }
                    }
                }
            }
        }
        return true;
    }

    /** The board's own panel, or else the first of those that it reaches and the load may sit in. */
    private int panelFor(int load, int board) {
        int own = compiled.boardPanel[board];
        if (!compiled.hasFurtherParts || compiled.allowedPanels[load].get(own)) {
            return own;
        }
        for (int panel : compiled.reachedPanels[board]) {
            if (compiled.allowedPanels[load].get(panel)) {
                return panel;
            }
        }
        return own;
    }

    /**
     * Takes a free spot of the panel for a load: of those that fit, one on the phases that carry least, the search starting
     * anywhere.
     *
     * @return null where none fits
     */
    Place take(int load, int panel, SplittableRandom random) {
        int slots = compiled.firstSlot[panel + 1] - compiled.firstSlot[panel];
        int offset = random.nextInt(slots);
        Place best = null;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < slots; i++) {
            Place place = compiled.placeAt[panel][1 + (offset + i) % slots][compiled.poles[load]];
            if (place != null && compiled.mayTake(load, place) && isFree(place)) {
                long carried = carried(place);
                if (carried < least) {
                    least = carried;
                    best = place;
                }
            }
        }
        if (best != null) {
            for (int slot : best.slots()) {
                taken.add(slot);
            }
        }
        return best;
    }

    private boolean isFree(Place place) {
        for (int slot : place.slots()) {
            boolean free = sums.loadInSlot(slot) == CompiledProject.NONE || left.contains(slot);
            if (!free || taken.contains(slot)) {
                return false;
            }
        }
        return true;
    }

    private long carried(Place place) {
        NodeCurrents currents = sums.currents(place.panel() + 1);
        long most = 0;
        for (int phase = 0; phase < compiled.phaseCount; phase++) {
            if ((place.phaseMask() >> phase & 1) != 0) {
                most = Math.max(most, currents.runningNano(phase));
            }
        }
        return most;
    }
}
