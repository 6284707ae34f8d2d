package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/**
 * A whole group (or a load without one) moves to another board, and to spots that board reaches; where there is no room,
 * it changes with a group from there.
 */
public final class GroupTransfer implements Neighbourhood {
    private static final int DRAWS_WHEN_OVERLOADED = 8;

    private final SpotFinder free;
    private final Lattice lattice;

    public GroupTransfer(PlanSums sums) {
        free = new SpotFinder(sums);
        lattice = new Lattice(sums);
    }

    @Override
    public boolean unsettles() {
        return true;
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int load = targets.load(random);
        Output from = sums.outputOf(load);
        if (from == null || sums.placeOf(load) == null) {
            return false;
        }
        int board = from.board();
        int other = target(sums, load, random);
        if (other == board) {
            return false;
        }
        BoardOrder here = new BoardOrder(sums, board);
        BoardOrder there = new BoardOrder(sums, other);
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
        if (coming.length > 0 && compiled.drops[coming[0]] != compiled.drops[going[0]] && here.size() > going.length) {
            return false;
        }
        if (there.size() > coming.length
                && compiled.drops[survivor(there, spot, spotEnd)] != compiled.drops[going[0]]) {
            return false;
        }
        if (!here.replace(start, end, coming, random) || !there.replace(spot, spotEnd, going, random)) {
            return false;
        }
        here.layOut(draft);
        if (there.size() == going.length && !compiled.isSmall()) {
            lattice.follow(going, other, random, draft); // its setting was for others
        } else {
            there.layOut(draft);
        }
        free.clear();
        free.leaveFor(going, other);
        free.leaveFor(coming, board);
        return free.settle(going, other, random, draft)
                && free.settle(coming, board, random, draft)
                && draft.keepsRanges();
    }

    /** Any board that may switch the load; for one that must leave its panel, of several the one whose panel has most left. */
    private static int target(PlanSums sums, int load, SplittableRandom random) {
        CompiledProject compiled = sums.compiled;
        int[] boards = compiled.nearbyBoards[load];
        if (boards.length == 0) {
            return sums.outputOf(load).board(); // where it is in spite of the rules
        }
        int best = boards[random.nextInt(boards.length)];
        if (!compiled.isSmall() && sums.isOverloaded(sums.placeOf(load).panel())) {
            for (int i = 1; i < DRAWS_WHEN_OVERLOADED; i++) {
                int other = boards[random.nextInt(boards.length)];
                if (spareNano(sums, other) > spareNano(sums, best)) {
                    best = other;
                }
            }
        }
        return best;
    }

    /** Running current that a board's panel may still take on each phase. */
    private static double spareNano(PlanSums sums, int board) {
        int node = sums.compiled.boardPanel[board] + 1;
        return sums.compiled.limits.runningNano[node] - sums.currents(node).meanNano();
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
