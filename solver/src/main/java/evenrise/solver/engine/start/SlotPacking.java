package evenrise.solver.engine.start;

import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Packs the breakers of each panel: fixed slots first, then by poles from three to one, since what needs a row of slots
 * together must not find it broken up; each on the phases that carry least.
 */
final class SlotPacking {
    private final Situation situation;
    private final Plant plant;

    SlotPacking(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
    }

    /** Places every load in its panel where a spot is left; {@link Plant#NONE} is no panel. */
    void pack(int[] panels) {
        List<Integer> order = IntStream.range(0, plant.loadCount())
                .boxed()
                .filter(load -> panels[load] != Plant.NONE)
                .sorted(Comparator.comparing((Integer load) -> plant.fixedSlot[load] == Plant.NONE)
                        .thenComparing(load -> -plant.poles[load])
                        .thenComparing(load -> !plant.switched[load])
                        .thenComparing(load -> -plant.currents.runningNano[load])
                        .thenComparing(load -> load))
                .toList();
        for (int load : order) {
            Place place = best(load, panels[load]);
            if (place != null) {
                situation.place(load, place);
                situation.settle();
            }
        }
    }

    private Place best(int load, int panel) {
        Place best = null;
        double least = Double.POSITIVE_INFINITY;
        int phases = plant.phaseCount;
        int slots = plant.firstSlot[panel + 1] - plant.firstSlot[panel];
        for (int slot = 1; slot <= slots; slot++) {
            Place place = plant.placeAt[panel][slot][plant.poles[load]];
            if (place == null || !plant.mayTake(load, place) || !isFree(place)) {
                continue;
            }
            // A three-pole breaker on a row of its own kind keeps the next one's row whole.
            boolean broken = place.poles() == phases && (row(place) - 1) % phases != 0;
            boolean wasteful = !plant.switched[load] && place.takesSwitched();
            double cost = carried(place)
                    + (broken ? 1e15 : 0)
                    + (wasteful ? 1e16 : 0)
                    + (leavesPhase(load, place) ? 1e17 : 0);
            if (cost < least) {
                least = cost;
                best = place;
            }
        }
        return best;
    }

    /** Whether a load that must share the phases of this one sits on others already. */
    private boolean leavesPhase(int load, Place place) {
        for (int pair : plant.pairs.ofLoad[load]) {
            Place other = situation.placeOf(plant.pairs.first[pair] + plant.pairs.second[pair] - load);
            boolean differs = other != null && other.phaseMask() != place.phaseMask();
            if (plant.pairs.kind[pair] == Pairs.SAME_PHASE && differs) {
                return true;
            }
        }
        return false;
    }

    private int row(Place place) {
        boolean alternating = place.slots().length < 2 || place.slots()[1] - place.slots()[0] == 2;
        return alternating ? (place.slot() + 1) / 2 : place.slot();
    }

    private boolean isFree(Place place) {
        for (int slot : place.slots()) {
            if (situation.loadInSlot(slot) != Plant.NONE) {
                return false;
            }
        }
        return true;
    }

    private double carried(Place place) {
        double most = 0;
        for (int phase = 0; phase < plant.phaseCount; phase++) {
            if ((place.phaseMask() >> phase & 1) != 0) {
                most = Math.max(most, situation.currents(place.panel() + 1).runningNano(phase));
            }
        }
        return most;
    }
}
