package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** A load takes another spot that its board reaches; whoever sat there takes the spot it leaves, pole for pole. */
public final class PlaceExchange implements Neighbourhood {
    private static final int TRIES = 4;

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int load = aim.load(random);
        Place from = situation.placeOf(load);
        if (from == null) {
            return false;
        }
        Place best = null;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < TRIES; i++) {
            int panel = panel(situation, load, from, random);
            int slot = 1 + random.nextInt(plant.firstSlot[panel + 1] - plant.firstSlot[panel]);
            Place to = plant.placeAt[panel][slot][plant.poles[load]];
            if (to != null && changesPhases(from, to) && plant.mayTake(load, to)) {
                long difference = difference(situation, load, to);
                if (difference < least) {
                    least = difference;
                    best = to;
                }
            }
        }
        return best != null && swap(situation, load, from, best, sketch) && sketch.keepsRanges();
    }

    /** On the same phases of the same panel nothing would change but the wiring; three poles touch all of them anyway. */
    private static boolean changesPhases(Place from, Place to) {
        return from.phaseMask() != to.phaseMask() || from.panel() != to.panel();
    }

    /** How unlike in running current the load is to who sits there: likes can change places without upsetting a balance. */
    private static long difference(Situation situation, int load, Place to) {
        Plant plant = situation.plant;
        long difference = 0;
        for (int slot : to.slots()) {
            int occupant = situation.loadInSlot(slot);
            long other = occupant == Plant.NONE ? 0 : plant.currents.runningNano[occupant];
            difference += Math.abs(plant.currents.runningNano[load] - other);
        }
        return difference;
    }

    private static int panel(Situation situation, int load, Place from, SplittableRandom random) {
        Plant plant = situation.plant;
        if (random.nextInt(8) != 0) {
            return from.panel();
        }
        Output output = situation.outputOf(load);
        if (output == null) {
            return random.nextInt(plant.panelCount);
        }
        int[] reached = plant.reachedPanels[output.board()];
        return reached.length == 0 ? from.panel() : reached[random.nextInt(reached.length)];
    }

    /** Draws the exchange; false where an occupant sticks out of the spot or does not fit into the other. */
    public static boolean swap(Situation situation, int load, Place from, Place to, Sketch sketch) {
        Plant plant = situation.plant;
        boolean shifts = overlap(from, to);
        int previous = Plant.NONE;
        for (int i = 0; i < to.slots().length; i++) {
            int occupant = situation.loadInSlot(to.slots()[i]);
            if (occupant == Plant.NONE || occupant == load || occupant == previous) {
                continue;
            }
            previous = occupant;
            Place held = situation.placeOf(occupant);
            if (shifts || held.slots()[0] != to.slots()[i] || i + held.poles() > to.poles()) {
                return false;
            }
            int slot = from.slots()[i] - plant.firstSlot[from.panel()] + 1;
            Place offered = plant.placeAt[from.panel()][slot][held.poles()];
            if (offered == null || !plant.mayTake(occupant, offered)) {
                return false;
            }
            sketch.place(occupant, offered);
        }
        sketch.place(load, to);
        return true;
    }

    private static boolean overlap(Place one, Place other) {
        for (int a : one.slots()) {
            for (int b : other.slots()) {
                if (a == b) {
                    return true;
                }
            }
        }
        return false;
    }
}
