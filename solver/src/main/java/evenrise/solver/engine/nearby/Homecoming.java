package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.Aim;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.PlaceExchange;
import evenrise.solver.engine.move.Sketch;
import evenrise.solver.engine.state.IntBag;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.ArrayDeque;
import java.util.SplittableRandom;

/**
 * A load that was moved goes back to where it was built, and so does whoever is in its way; or that one takes what the
 * load leaves. Or a board gets back the setting it had.
 */
final class Homecoming implements Neighbourhood {
    private static final int LONGEST_CHAIN = 64;

    private final Homes homes;

    Homecoming(Homes homes) {
        this.homes = homes;
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        int loads = homes.awayLoads().size();
        int boards = homes.awayBoards().size();
        if (loads + boards == 0) {
            return false;
        }
        if (random.nextInt(loads + boards) < boards) {
            int board = homes.awayBoards().get(random.nextInt(boards));
            sketch.set(board, homes.startDelay(board), homes.step(board));
            return true;
        }
        int load = homes.awayLoads().get(random.nextInt(loads));
        int what = random.nextInt(4);
        boolean drawn =
                switch (what) {
                    case 0 -> bring(situation, load, true, false, sketch);
                    case 1 -> bring(situation, load, false, true, sketch);
                    case 2 -> bring(situation, load, true, true, sketch);
                    default -> exchange(situation, load, sketch);
                };
        return drawn && !sketch.isEmpty() && sketch.keepsRanges();
    }

    /** The load goes home, and whoever holds its home goes to its own. */
    boolean bring(Situation situation, int first, boolean places, boolean outputs, Sketch sketch) {
        ArrayDeque<Integer> chain = new ArrayDeque<>();
        IntBag met = new IntBag(situation.plant.loadCount());
        chain.add(first);
        met.add(first);
        while (!chain.isEmpty()) {
            int load = chain.poll();
            if (places && homes.place(load) != situation.placeOf(load)) {
                if (homes.place(load) == null) {
                    return false;
                }
                sketch.place(load, homes.place(load));
                for (int slot : homes.place(load).slots()) {
                    follow(situation.loadInSlot(slot), met, chain);
                }
            }
            if (outputs && homes.output(load) != situation.outputOf(load)) {
                if (homes.output(load) == null) {
                    return false;
                }
                sketch.wire(load, homes.output(load));
                follow(situation.loadOnOutput(homes.output(load).index()), met, chain);
            }
            if (met.size() > LONGEST_CHAIN) {
                return false;
            }
        }
        return true;
    }

    private static void follow(int occupant, IntBag met, ArrayDeque<Integer> chain) {
        if (occupant != Plant.NONE && !met.contains(occupant)) {
            met.add(occupant);
            chain.add(occupant);
        }
    }

    /** The load goes home, and whoever is there takes what it leaves. */
    private boolean exchange(Situation situation, int load, Sketch sketch) {
        Place place = homes.place(load);
        if (place != null && place != situation.placeOf(load) && situation.placeOf(load) != null) {
            return PlaceExchange.swap(situation, load, situation.placeOf(load), place, sketch);
        }
        Output output = homes.output(load);
        if (output == null || output == situation.outputOf(load) || situation.outputOf(load) == null) {
            return false;
        }
        int occupant = situation.loadOnOutput(output.index());
        if (occupant != Plant.NONE) {
            sketch.wire(occupant, situation.outputOf(load));
        }
        sketch.wire(load, output);
        return true;
    }
}
