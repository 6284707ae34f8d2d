package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/**
 * A load takes a spot or an output whoever holds it; those it turns out are without one until they are put in again. A way
 * through, where everything is too full or too tightly tied for an exchange.
 */
public final class Eviction implements Neighbourhood {
    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int load = aim.load(random);
        if (random.nextBoolean() || !plant.switched[load]) {
            return takePlace(situation, load, random, sketch);
        }
        return takeOutput(situation, load, random, sketch);
    }

    private static boolean takePlace(Situation situation, int load, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int panel = random.nextInt(plant.panelCount);
        int slot = 1 + random.nextInt(plant.firstSlot[panel + 1] - plant.firstSlot[panel]);
        Place place = plant.placeAt[panel][slot][plant.poles[load]];
        if (place == null || place == situation.placeOf(load)) {
            return false;
        }
        for (int taken : place.slots()) {
            int occupant = situation.loadInSlot(taken);
            if (occupant != Plant.NONE && occupant != load) {
                sketch.place(occupant, null);
            }
        }
        sketch.place(load, place);
        return sketch.keepsRanges();
    }

    private static boolean takeOutput(Situation situation, int load, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int[] near = plant.nearbyBoards[load];
        if (near.length == 0) {
            return false;
        }
        int board = near[random.nextInt(near.length)];
        Output output = plant.output(board, random.nextInt(plant.outputCount(board)));
        int occupant = situation.loadOnOutput(output.index());
        if (occupant == load) {
            return false;
        }
        if (occupant != Plant.NONE) {
            sketch.wire(occupant, null);
        }
        sketch.wire(load, output);
        Place place = situation.placeOf(load);
        if (place != null && !plant.reach[board].get(place.panel())) {
            sketch.place(load, null);
        }
        return sketch.keepsRanges();
    }
}
