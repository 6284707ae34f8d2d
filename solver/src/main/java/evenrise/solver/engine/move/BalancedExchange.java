package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
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

    BalancedExchange(Plant plant) {
        here = new Spots(plant);
        there = new Spots(plant);
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int load = aim.load(random);
        Place place = situation.placeOf(load);
        if (place == null || place.poles() != 1 || plant.phaseCount == 1) {
            return false;
        }
        int phase = Integer.numberOfTrailingZeros(place.phaseMask());
        int other = (phase + 1 + random.nextInt(plant.phaseCount - 1)) % plant.phaseCount;
        here.gather(situation, place, place.phaseMask());
        there.gather(situation, place, 1 << other);
        if (here.count == 0 || there.count < 2) {
            return false;
        }
        Place matePlace = here.places[random.nextInt(here.count)];
        long wantedNano = plant.currents.runningNano[load] + runningNano(situation, matePlace);
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
                && exchange(situation, place, there.places[first], sketch)
                && exchange(situation, matePlace, there.places[second], sketch)
                && sketch.keepsRanges();
    }

    private static long runningNano(Situation situation, Place place) {
        int load = situation.loadInSlot(place.slots()[0]);
        return load == Plant.NONE ? 0 : situation.plant.currents.runningNano[load];
    }

    private static boolean exchange(Situation situation, Place one, Place other, Sketch sketch) {
        return move(situation, one, other, sketch) && move(situation, other, one, sketch);
    }

    private static boolean move(Situation situation, Place from, Place to, Sketch sketch) {
        int load = situation.loadInSlot(from.slots()[0]);
        if (load == Plant.NONE) {
            return true;
        }
        if (!situation.plant.mayTake(load, to)) {
            return false;
        }
        sketch.place(load, to);
        return true;
    }

    /** Every spot of one pole on a phase of a panel, with what runs there; of free ones the first alone, all being alike. */
    private static final class Spots {
        private final Place[] places;
        private final long[] runningNano;
        private int count;

        Spots(Plant plant) {
            int most = 0;
            for (Place[][] panel : plant.placeAt) {
                most = Math.max(most, panel.length);
            }
            places = new Place[most];
            runningNano = new long[most];
        }

        void gather(Situation situation, Place without, int phaseMask) {
            count = 0;
            boolean hasFree = false;
            for (Place[] spot : situation.plant.placeAt[without.panel()]) {
                Place place = spot[1];
                if (place != null && place != without && place.phaseMask() == phaseMask) {
                    int occupant = situation.loadInSlot(place.slots()[0]);
                    boolean isFree = occupant == Plant.NONE;
                    if (isFree ? !hasFree : situation.placeOf(occupant) == place) {
                        places[count] = place;
                        runningNano[count++] = BalancedExchange.runningNano(situation, place);
                        hasFree |= isFree;
                    }
                }
            }
        }
    }
}
