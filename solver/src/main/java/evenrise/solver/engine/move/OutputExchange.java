package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/**
 * A load takes another output: it changes with one of its own group (or, without a group, with another such), or moves to
 * an output that is free and leaves every run of a group whole.
 */
final class OutputExchange implements Neighbourhood {
    private static final int TRIES = 4;
    /** One draw in so many, in a small project, asks neither about groups nor about the board. */
    private static final int BOLD = 8;

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int load = aim.load(random);
        Output from = situation.outputOf(load);
        if (from == null) {
            return false;
        }
        boolean bold = plant.isSmall() && random.nextInt(BOLD) == 0;
        for (int i = 0; i < TRIES; i++) {
            Output to = target(situation, load, from, bold, random);
            if (to == from) {
                continue;
            }
            int occupant = situation.loadOnOutput(to.index());
            boolean mends = bold || situation.isInterrupted(to.board());
            boolean keepsRuns =
                    occupant == Plant.NONE ? fits(situation, load, to) : plant.group[occupant] == plant.group[load];
            if (keepsRuns || mends) {
                sketch.wire(load, to);
                if (occupant != Plant.NONE) {
                    sketch.wire(occupant, from);
                }
                if (sketch.keepsRanges()) {
                    return true;
                }
                sketch.clear();
            }
        }
        return false;
    }

    /** An output of the same board; of another board for a bold change, or for a group that spans boards. */
    private static Output target(Situation situation, int load, Output from, boolean bold, SplittableRandom random) {
        Plant plant = situation.plant;
        int board = from.board();
        int group = plant.group[load];
        if (bold) {
            int[] near = plant.nearbyBoards[load];
            board = near[random.nextInt(near.length)];
        }
        if (group != Plant.NONE && plant.groupIsLarge[group] && random.nextBoolean()) {
            int[] members = plant.groupMembers[group];
            int[] near = plant.nearbyBoards[load];
            Output other = situation.outputOf(members[random.nextInt(members.length)]);
            boolean begins = other == null || random.nextInt(4) == 0;
            board = begins ? near[random.nextInt(near.length)] : other.board();
        }
        return plant.output(board, random.nextInt(plant.outputCount(board)));
    }

    /** Whether a load may take a free output without interrupting a group or leaving its own. */
    static boolean fits(Situation situation, int load, Output to) {
        Plant plant = situation.plant;
        int group = plant.group[load];
        int left = neighbour(situation, load, to, -1);
        int right = neighbour(situation, load, to, 1);
        int leftGroup = left == Plant.NONE ? Plant.NONE : plant.group[left];
        int rightGroup = right == Plant.NONE ? Plant.NONE : plant.group[right];
        if (group != Plant.NONE && (leftGroup == group || rightGroup == group)) {
            return true;
        }
        boolean inside = leftGroup != Plant.NONE && leftGroup == rightGroup;
        return !inside
                && (group == Plant.NONE || plant.groupMembers[group].length == 1 || isNewTo(situation, load, to));
    }

    private static boolean isNewTo(Situation situation, int load, Output to) {
        Output from = situation.outputOf(load);
        return from != null && from.board() != to.board();
    }

    private static int neighbour(Situation situation, int load, Output from, int direction) {
        Plant plant = situation.plant;
        int low = plant.firstOutput[from.board()];
        int high = plant.firstOutput[from.board() + 1];
        for (int k = from.index() + direction; k >= low && k < high; k += direction) {
            int other = situation.loadOnOutput(k);
            if (other != Plant.NONE && other != load) {
                return other;
            }
        }
        return Plant.NONE;
    }
}
