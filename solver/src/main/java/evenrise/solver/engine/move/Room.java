package evenrise.solver.engine.move;

import evenrise.solver.engine.state.IntBag;
import evenrise.solver.engine.state.NodeCurrents;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** Finds spots in a panel for loads that move in, counting as free what others leave in the same change. */
final class Room {
    private final Situation situation;
    private final Plant plant;
    private final IntBag left;
    private final IntBag taken;

    Room(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
        left = new IntBag(plant.slotCount());
        taken = new IntBag(plant.slotCount());
    }

    void clear() {
        left.clear();
        taken.clear();
    }

    /** Counts as free what these loads will leave, going to a board that does not reach their panels. */
    void leaveFor(int[] loads, int board) {
        for (int load : loads) {
            Place place = situation.placeOf(load);
            if (place != null && !plant.reach[board].get(place.panel())) {
                leave(place);
            }
        }
    }

    /** Counts a place as free. */
    void leave(Place place) {
        for (int slot : place.slots()) {
            left.add(slot);
        }
    }

    /** Finds a spot in a board's panel for each load whose own the board does not reach; false where one is missing. */
    boolean settle(int[] loads, int board, SplittableRandom random, Sketch sketch) {
        for (int poles = plant.phaseCount; poles >= 1; poles--) {
            for (int load : loads) {
                Place place = situation.placeOf(load);
                if (plant.poles[load] == poles && (place == null || !plant.reach[board].get(place.panel()))) {
                    Place taken = take(load, plant.boardPanel[board], random);
                    if (taken == null) {
                        return false;
                    }
                    sketch.place(load, taken);
                }
            }
        }
        return true;
    }

    /**
     * Takes a free spot of the panel for a load: of those that fit, one on the phases that carry least, the search starting
     * anywhere.
     *
     * @return null where none fits
     */
    Place take(int load, int panel, SplittableRandom random) {
        int slots = plant.firstSlot[panel + 1] - plant.firstSlot[panel];
        int offset = random.nextInt(slots);
        Place best = null;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < slots; i++) {
            Place place = plant.placeAt[panel][1 + (offset + i) % slots][plant.poles[load]];
            if (place != null && plant.mayTake(load, place) && isFree(place)) {
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
            boolean free = situation.loadInSlot(slot) == Plant.NONE || left.contains(slot);
            if (!free || taken.contains(slot)) {
                return false;
            }
        }
        return true;
    }

    private long carried(Place place) {
        NodeCurrents currents = situation.currents(place.panel() + 1);
        long most = 0;
        for (int phase = 0; phase < plant.phaseCount; phase++) {
            if ((place.phaseMask() >> phase & 1) != 0) {
                most = Math.max(most, currents.runningNano(phase));
            }
        }
        return most;
    }
}
