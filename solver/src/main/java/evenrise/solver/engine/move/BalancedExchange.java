package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/**
 * A load and another of its phase change places with two of another phase of the panel, or with one and a free spot, that
 * draw nearly as much together. The phase that must bear the highest peak should carry little before; what sits there
 * leaves one by one only through plans out of balance, and two for two at once.
 */
final class BalancedExchange implements Neighbourhood {
    /** One-pole spots of two phases; the load's own is not among them. */
    private final Spots here;

    private final Spots there;

    BalancedExchange(CompiledProject compiled) {
        here = new Spots(compiled);
        there = new Spots(compiled);
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int load = targets.load(random);
        Place place = sums.placeOf(load);
        if (place == null || place.poles() != 1 || compiled.phaseCount == 1) {
            return false;
        }
        int phase = Integer.numberOfTrailingZeros(place.phaseMask());
        int other = (phase + 1 + random.nextInt(compiled.phaseCount - 1)) % compiled.phaseCount;
        here.gather(sums, place, place.phaseMask());
        there.gather(sums, place, 1 << other);
        if (here.count == 0 || there.count < 2) {
            return false;
        }
        Place matePlace = here.places[random.nextInt(here.count)];
        long wantedNano = compiled.currents.runningNano[load] + runningNano(sums, matePlace);
        long leastNano = Long.MAX_VALUE;
        int first = 0;
        int second = 0;
        for (int i = 0; i < there.count; i++) {
            for (int j = i + 1; j < there.count; j++) {
                long differenceNano = Math.abs(wantedNano - there.runningNano[i] - there.runningNano[j]);
                // Half of the pairs are passed over, or the same load would always find the same two.
                if (differenceNano < leastNano && random.nextBoolean()) {
                    leastNano = differenceNano;
                    first = i;
                    second = j;
                }
            }
        }
        return leastNano < Long.MAX_VALUE
                && exchange(sums, place, there.places[first], draft)
                && exchange(sums, matePlace, there.places[second], draft)
                && draft.keepsRanges();
    }

    private static long runningNano(PlanSums sums, Place place) {
        int load = sums.loadInSlot(place.slots()[0]);
        return load == CompiledProject.NONE ? 0 : sums.compiled.currents.runningNano[load];
    }

    private static boolean exchange(PlanSums sums, Place one, Place other, DraftMove draft) {
        return move(sums, one, other, draft) && move(sums, other, one, draft);
    }

    private static boolean move(PlanSums sums, Place from, Place to, DraftMove draft) {
        int load = sums.loadInSlot(from.slots()[0]);
        if (load == CompiledProject.NONE) {
            return true;
        }
        if (!sums.compiled.mayTake(load, to)) {
            return false;
        }
        draft.place(load, to);
        return true;
    }

    /** Every spot of one pole on a phase of a panel, with what runs there; of free ones the first alone, all being alike. */
    private static final class Spots {
        private final Place[] places;
        private final long[] runningNano;
        private int count;

        Spots(CompiledProject compiled) {
            int most = 0;
            for (Place[][] panel : compiled.placeAt) {
                most = Math.max(most, panel.length);
            }
            places = new Place[most];
            runningNano = new long[most];
        }

        void gather(PlanSums sums, Place without, int phaseMask) {
            count = 0;
            boolean hasFree = false;
            for (Place[] spot : sums.compiled.placeAt[without.panel()]) {
                Place place = spot[1];
                if (place != null && place != without && place.phaseMask() == phaseMask) {
                    int occupant = sums.loadInSlot(place.slots()[0]);
                    boolean isFree = occupant == CompiledProject.NONE;
                    if (isFree ? !hasFree : sums.placeOf(occupant) == place) {
                        places[count] = place;
                        runningNano[count++] = BalancedExchange.runningNano(sums, place);
                        hasFree |= isFree;
                    }
                }
            }
        }
    }
}
