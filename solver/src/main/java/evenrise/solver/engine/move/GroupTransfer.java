package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/**
 * A whole group (or a load without one) moves to another board, and to spots that board reaches; where there is no room,
 * it changes with a group from there.
 */
final class GroupTransfer implements Neighbourhood {
    private static final int DRAWS_WHEN_OVERLOADED = 8;

    private final Room room;
    private final Lattice lattice;

    GroupTransfer(Situation situation) {
        room = new Room(situation);
        lattice = new Lattice(situation);
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int load = aim.load(random);
        Output from = situation.outputOf(load);
        if (from == null || situation.placeOf(load) == null) {
            return false;
        }
        int board = from.board();
        int other = target(situation, load, random);
        if (other == board) {
            return false;
        }
        BoardOrder here = new BoardOrder(situation, board);
        BoardOrder there = new BoardOrder(situation, other);
        int position = position(here, load);
        int start = here.runStart(position);
        int end = here.runEnd(position);
        int[] going = loads(here, start, end);
        int spot = there.size() == 0 ? 0 : there.runStart(random.nextInt(there.size()));
        int spotEnd = spot;
        boolean exchange = there.size() > 0 && (there.freeOutputs() < going.length || random.nextBoolean());
        if (exchange) {
            spotEnd = there.runEnd(spot);
        }
        int[] coming = loads(there, spot, spotEnd);
        if (coming.length > 0 && plant.drops[coming[0]] != plant.drops[going[0]] && here.size() > going.length) {
            return false;
        }
        if (there.size() > coming.length && plant.drops[survivor(there, spot, spotEnd)] != plant.drops[going[0]]) {
            return false;
        }
        if (!here.replace(start, end, coming, random) || !there.replace(spot, spotEnd, going, random)) {
            return false;
        }
        here.layOut(sketch);
        if (there.size() == going.length && !plant.isSmall()) {
            lattice.follow(going, other, random, sketch); // its setting was for others
        } else {
            there.layOut(sketch);
        }
        room.clear();
        room.leaveFor(going, other);
        room.leaveFor(coming, board);
        return room.settle(going, other, random, sketch)
                && room.settle(coming, board, random, sketch)
                && sketch.keepsRanges();
    }

    /** Any board that may switch the load; for one that must leave its panel, of several the one whose panel has most left. */
    private static int target(Situation situation, int load, SplittableRandom random) {
        Plant plant = situation.plant;
        int[] boards = plant.nearbyBoards[load];
        int best = boards[random.nextInt(boards.length)];
        if (!plant.isSmall() && situation.isOverloaded(situation.placeOf(load).panel())) {
            for (int i = 1; i < DRAWS_WHEN_OVERLOADED; i++) {
                int other = boards[random.nextInt(boards.length)];
                if (spareNano(situation, other) > spareNano(situation, best)) {
                    best = other;
                }
            }
        }
        return best;
    }

    /** Running current that a board's panel may still take on each phase. */
    private static double spareNano(Situation situation, int board) {
        int node = situation.plant.boardPanel[board] + 1;
        return situation.plant.limits.runningNano[node]
                - situation.currents(node).meanNano();
    }

    private static int position(BoardOrder order, int load) {
        int position = 0;
        while (order.load(position) != load) {
            position++;
        }
        return position;
    }

    private static int survivor(BoardOrder order, int spot, int spotEnd) {
        return order.load(spot > 0 ? 0 : spotEnd);
    }

    private static int[] loads(BoardOrder order, int from, int to) {
        int[] loads = new int[to - from];
        for (int i = from; i < to; i++) {
            loads[i - from] = order.load(i);
        }
        return loads;
    }
}
