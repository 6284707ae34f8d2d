package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Packs the breakers of each panel: fixed slots first, then by poles from three to one, since what needs a row of slots
 * together must not find it broken up; each on the phases that carry least.
 */
final class SlotPacking {
    private final PlanSums sums;
    private final CompiledProject compiled;
    private final KeptSlots spare;

    SlotPacking(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
        this.spare = new KeptSlots(sums);
    }

    /** Places every load in its panel where a spot is left; {@link CompiledProject#NONE} is no panel. */
    void pack(int[] panels) {
        List<Integer> order = IntStream.range(0, compiled.loadCount())
                .boxed()
                .filter(load -> panels[load] != CompiledProject.NONE)
                .sorted(Comparator.comparing((Integer load) -> compiled.fixedSlot[load] == CompiledProject.NONE)
                        .thenComparing(load -> -compiled.poles[load])
                        .thenComparing(load -> !compiled.needsSwitchedSlot[load])
                        .thenComparing(load -> -compiled.currents.runningNano[load])
                        .thenComparing(load -> load))
                .toList();
        boolean keepsSpare = false;
        for (int load : order) {
            if (!keepsSpare && compiled.fixedSlot[load] == CompiledProject.NONE) {
                keepsSpare = true;
                spare.reserve();
            }
            Place place = best(load, panels[load], true);
            place = place == null ? best(load, panels[load], false) : place;
            if (place != null) {
                sums.place(load, place);
                sums.settle();
            }
        }
    }

    /** @param keepsSpare whether slots that are to stay free are out of reach */
    private Place best(int load, int panel, boolean keepsSpare) {
        Place best = null;
        double least = Double.POSITIVE_INFINITY;
        int phases = compiled.phaseCount;
        int slots = compiled.firstSlot[panel + 1] - compiled.firstSlot[panel];
        for (int slot = 1; slot <= slots; slot++) {
            Place place = compiled.placeAt[panel][slot][compiled.poles[load]];
            if (place == null
                    || !compiled.mayTake(load, place)
                    || !isFree(place)
                    || (keepsSpare && spare.isKept(place))) {
                continue;
            }
            // A three-pole breaker on a row of its own kind keeps the next one's row whole.
            boolean broken = place.poles() == phases && (row(place) - 1) % phases != 0;
            int wasted = compiled.needsSwitchedSlot[load] ? 0 : switchedSlots(place);
            double cost = carried(place) + (broken ? 1e15 : 0) + wasted * 1e16 + (leavesPhase(load, place) ? 1e17 : 0);
            if (cost < least) {
                least = cost;
                best = place;
            }
        }
        return best;
    }

    /** Whether a load that must share the phases of this one sits on others already. */
    private boolean leavesPhase(int load, Place place) {
        for (int pair : compiled.pairs.ofLoad[load]) {
            Place other = sums.placeOf(compiled.pairs.first[pair] + compiled.pairs.second[pair] - load);
            boolean differs = other != null && other.phaseMask() != place.phaseMask();
            if (compiled.pairs.kind[pair] == Pairs.SAME_PHASE && differs) {
                return true;
            }
        }
        return false;
    }

    private int row(Place place) {
        boolean alternating = place.slots().length < 2 || place.slots()[1] - place.slots()[0] == 2;
        return alternating ? (place.slot() + 1) / 2 : place.slot();
    }

    /** Slots of a place that take a switched breaker; in a plain project all or none. */
    private int switchedSlots(Place place) {
        if (!compiled.hasFurtherParts) {
            return place.takesSwitched() ? 1 : 0;
        }
        int count = 0;
        for (int slot : place.slots()) {
            int own = slot - compiled.firstSlot[place.panel()] + 1;
            Place single = compiled.placeAt[place.panel()][own][1];
            count += single != null && single.takesSwitched() ? 1 : 0;
        }
        return count;
    }

    private boolean isFree(Place place) {
        for (int slot : place.slots()) {
            if (sums.loadInSlot(slot) != CompiledProject.NONE) {
                return false;
            }
        }
        return true;
    }

    private double carried(Place place) {
        double most = 0;
        for (int phase = 0; phase < compiled.phaseCount; phase++) {
            if ((place.phaseMask() >> phase & 1) != 0) {
                most = Math.max(most, sums.currents(place.panel() + 1).runningNano(phase));
            }
        }
        return most;
    }
}
