package evenrise.solver.exhaustive;

import evenrise.solver.exhaustive.LoadKinds.Kind;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.Arrays;

/**
 * Who may be on which board, as outputs are given in the order of their times: no board mixes what drops with what holds; a
 * group that fits a board has one for all of it, in a row; a larger one shares none.
 */
final class BoardSeats {
    private static final long FREE = 0;
    private static final long HOLDS = 1;
    private static final long DROPS = 2;

    /** A board's state is what it does on an emergency, and this often the group that has it now, from 1. */
    private static final long GROUP = 4;

    private final long states;
    private final int[] sizes;
    private final int largest;
    private final long[] boards;
    private final int[] placed;
    private final int[] boardOf;

    /** Outputs of each board from each instant on. */
    private int[][] outputsFrom = new int[0][];

    BoardSeats(SmallProject project) {
        largest = project.mostOutputs();
        int groups = project.project.shutdownGroups().size();
        states = GROUP * (groups + 1);
        sizes = new int[groups];
        placed = new int[groups];
        boardOf = new int[groups];
        project.loads.stream().filter(load -> load.group() >= 0).forEach(load -> sizes[load.group()]++);
        boards = new long[project.boards.size()];
    }

    void clear(Instant[] instants) {
        Arrays.fill(boards, FREE);
        Arrays.fill(placed, 0);
        outputsFrom = new int[instants.length + 1][boards.length];
        for (int at = instants.length - 1; at >= 0; at--) {
            System.arraycopy(outputsFrom[at + 1], 0, outputsFrom[at], 0, boards.length);
            outputsFrom[at][instants[at].board()]++;
        }
    }

    boolean mayTake(int board, SmallLoad load) {
        long state = boards[board];
        if (state == FREE) {
            return load.group() < 0 || isLarge(load.group()) || placed[load.group()] == 0;
        }
        if (state % GROUP != (load.drops() ? DROPS : HOLDS)) {
            return false;
        }
        long own = state / GROUP;
        if (own > 0) {
            return own == load.group() + 1;
        }
        return load.group() < 0 || !isLarge(load.group()) && placed[load.group()] == 0;
    }

    /** @return the board's state before, to be given back */
    long take(int board, SmallLoad load) {
        long before = boards[board];
        int group = load.group();
        long own = 0;
        if (group >= 0) {
            placed[group]++;
            boardOf[group] = board;
            own = isLarge(group) || placed[group] < sizes[group] ? group + 1 : 0;
        }
        boards[board] = own * GROUP + (load.drops() ? DROPS : HOLDS);
        return before;
    }

    void giveBack(int board, SmallLoad load, long before) {
        boards[board] = before;
        if (load.group() >= 0) {
            placed[load.group()]--;
        }
    }

    /** Whether outputs are left for what is left of each group that has begun, and for all that drops and all that holds. */
    boolean suffice(int at, int[] left, Kind[] kinds) {
        int[] outputs = outputsFrom[at];
        for (int group = 0; group < sizes.length; group++) {
            boolean isBegun = placed[group] > 0 && placed[group] < sizes[group];
            if (isBegun && !isLarge(group) && outputs[boardOf[group]] < sizes[group] - placed[group]) {
                return false;
            }
        }
        int dropping = 0;
        int holding = 0;
        for (int kind = 0; kind < kinds.length; kind++) {
            if (kinds[kind].first().drops()) {
                dropping += left[kind];
            } else {
                holding += left[kind];
            }
        }
        for (int board = 0; board < boards.length; board++) {
            long does = boards[board] % GROUP;
            dropping -= does == HOLDS ? 0 : outputs[board];
            holding -= does == DROPS ? 0 : outputs[board];
        }
        return dropping <= 0 && holding <= 0;
    }

    /** All that decides who may be on which board next, in one number. */
    long state() {
        long state = 0;
        for (long board : boards) {
            state = state * states + board;
        }
        return state;
    }

    private boolean isLarge(int group) {
        return sizes[group] > largest;
    }
}
