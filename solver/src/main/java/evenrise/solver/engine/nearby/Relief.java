package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.Aim;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.PlaceExchange;
import evenrise.solver.engine.move.Sketch;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/**
 * One load takes another spot, free or in exchange with whoever sits there, or another output, free or in exchange: the
 * least that can be changed, with no eye to whether both are alike. A load that leaves the reach of its board goes to a
 * free output of one that reaches its new panel.
 */
final class Relief implements Neighbourhood {
    private static final int TRIES = 8;

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        int load = aim.load(random);
        Place from = situation.placeOf(load);
        if (from == null) {
            return false;
        }
        boolean stays = random.nextInt(3) != 0;
        boolean onlyFree = random.nextBoolean();
        Plant plant = situation.plant;
        for (int i = 0; i < TRIES; i++) {
            sketch.clear();
            int panel = stays ? from.panel() : random.nextInt(plant.panelCount);
            int slot = 1 + random.nextInt(plant.firstSlot[panel + 1] - plant.firstSlot[panel]);
            Place to = plant.placeAt[panel][slot][plant.poles[load]];
            boolean differs = to != null && (to.phaseMask() != from.phaseMask() || to.panel() != from.panel());
            if (differs
                    && plant.mayTake(load, to)
                    && !(onlyFree && isTaken(situation, load, to))
                    && PlaceExchange.swap(situation, load, from, to, sketch)
                    && land(situation, load, to, random, sketch)
                    && sketch.keepsRanges()) {
                return true;
            }
        }
        return false;
    }

    private static boolean isTaken(Situation situation, int load, Place to) {
        for (int slot : to.slots()) {
            int occupant = situation.loadInSlot(slot);
            if (occupant != Plant.NONE && occupant != load) {
                return true;
            }
        }
        return false;
    }

    private static boolean land(Situation situation, int load, Place to, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        Output output = situation.outputOf(load);
        if (output == null || plant.reach[output.board()].get(to.panel())) {
            return true;
        }
        int[] near = plant.nearbyBoards[load];
        for (int i = 0; i < TRIES && near.length > 0; i++) {
            int board = near[random.nextInt(near.length)];
            if (plant.reach[board].get(to.panel())) {
                Output free = plant.output(board, random.nextInt(plant.outputCount(board)));
                if (situation.loadOnOutput(free.index()) == Plant.NONE) {
                    sketch.wire(load, free);
                    return true;
                }
            }
        }
        return false;
    }
}
