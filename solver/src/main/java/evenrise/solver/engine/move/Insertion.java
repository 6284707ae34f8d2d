package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** A load that has found no room yet is put where there is some, or where another one makes way for it. */
public final class Insertion implements Neighbourhood {
    private final Room room;

    public Insertion(Situation situation) {
        room = new Room(situation);
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        if (situation.unassigned() == 0) {
            return false;
        }
        int load = situation.unassignedLoad(random.nextInt(situation.unassigned()));
        Output output = situation.outputOf(load);
        if (plant.switched[load] && output == null) {
            int[] boards = plant.nearbyBoards[load];
            if (boards.length == 0) {
                return false;
            }
            int board = boards[random.nextInt(boards.length)];
            output = plant.output(board, random.nextInt(plant.outputCount(board)));
            int occupant = situation.loadOnOutput(output.index());
            if (occupant != Plant.NONE) {
                sketch.wire(occupant, null);
            }
            sketch.wire(load, output);
        }
        if (situation.placeOf(load) == null) {
            int panel = panel(situation, load, output, random);
            room.clear();
            Place place = panel == Plant.NONE ? null : room.take(load, panel, random);
            if (place == null && panel != Plant.NONE) {
                place = makeWay(situation, load, panel, random, sketch);
            }
            if (place == null) {
                return false;
            }
            sketch.place(load, place);
        }
        return sketch.keepsRanges();
    }

    private static int panel(Situation situation, int load, Output output, SplittableRandom random) {
        Plant plant = situation.plant;
        int start = random.nextInt(plant.panelCount);
        for (int i = 0; i < plant.panelCount; i++) {
            int panel = (start + i) % plant.panelCount;
            if (plant.allowedPanels[load].get(panel) && (output == null || plant.reach[output.board()].get(panel))) {
                return panel;
            }
        }
        return Plant.NONE;
    }

    private static Place makeWay(Situation situation, int load, int panel, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int slot = 1 + random.nextInt(plant.firstSlot[panel + 1] - plant.firstSlot[panel]);
        Place place = plant.placeAt[panel][slot][plant.poles[load]];
        if (place == null || !plant.mayTake(load, place)) {
            return null;
        }
        for (int taken : place.slots()) {
            int occupant = situation.loadInSlot(taken);
            if (occupant != Plant.NONE && plant.fixedSlot[occupant] != Plant.NONE) {
                return null;
            }
            if (occupant != Plant.NONE) {
                sketch.place(occupant, null);
            }
        }
        return place;
    }
}
