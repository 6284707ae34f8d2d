package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
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
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int load = targets.load(random);
        Output from = sums.outputOf(load);
        if (from == null) {
            return false;
        }
        boolean isTimed = compiled.times[from.board()] != null;
        boolean bold = (compiled.isSmall() || isTimed) && random.nextInt(BOLD) == 0;
        for (int i = 0; i < TRIES; i++) {
            Output to = target(sums, load, from, bold, random);
            if (to == from) {
                continue;
            }
            int occupant = sums.loadOnOutput(to.index());
            boolean mends = bold || sums.isInterrupted(to.board());
            boolean keepsRuns = occupant == CompiledProject.NONE
                    ? fits(sums, load, to)
                    : compiled.group[occupant] == compiled.group[load];
            if (keepsRuns || mends) {
                if (occupant == CompiledProject.NONE) {
                    draft.wire(load, to);
                } else {
                    draft.wireAs(load, occupant);
                    draft.wireAs(occupant, load);
                }
                if (draft.keepsRanges()) {
                    return true;
                }
                draft.clear();
            }
        }
        return false;
    }

    /** An output of the same board; of another board for a bold change, or for a group that spans boards. */
    private static Output target(PlanSums sums, int load, Output from, boolean bold, SplittableRandom random) {
        CompiledProject compiled = sums.compiled;
        int board = from.board();
        int group = compiled.group[load];
        int[] near = compiled.nearbyBoards[load];
        if (near.length == 0) {
            return from; // it is there in spite of the rules
        }
        if (bold) {
            board = near[random.nextInt(near.length)];
        }
        if (group != CompiledProject.NONE && compiled.groupIsLarge[group] && random.nextBoolean()) {
            int[] members = compiled.groupMembers[group];
            Output other = sums.outputOf(members[random.nextInt(members.length)]);
            boolean begins = other == null || random.nextInt(4) == 0;
            board = begins ? near[random.nextInt(near.length)] : other.board();
        }
        return compiled.output(board, random.nextInt(compiled.outputCount(board)));
    }

    /** Whether a load may take a free output without interrupting a group or leaving its own. */
    static boolean fits(PlanSums sums, int load, Output to) {
        CompiledProject compiled = sums.compiled;
        int group = compiled.group[load];
        int left = neighbour(sums, load, to, -1);
        int right = neighbour(sums, load, to, 1);
        int leftGroup = left == CompiledProject.NONE ? CompiledProject.NONE : compiled.group[left];
        int rightGroup = right == CompiledProject.NONE ? CompiledProject.NONE : compiled.group[right];
        if (group != CompiledProject.NONE && (leftGroup == group || rightGroup == group)) {
            return true;
        }
        boolean inside = leftGroup != CompiledProject.NONE && leftGroup == rightGroup;
        return !inside
                && (group == CompiledProject.NONE
                        || compiled.groupMembers[group].length == 1
                        || isNewTo(sums, load, to));
    }

    private static boolean isNewTo(PlanSums sums, int load, Output to) {
        Output from = sums.outputOf(load);
        return from != null && from.board() != to.board();
    }

    private static int neighbour(PlanSums sums, int load, Output from, int direction) {
        CompiledProject compiled = sums.compiled;
        int low = compiled.firstOutput[from.board()];
        int high = compiled.firstOutput[from.board() + 1];
        for (int k = from.index() + direction; k >= low && k < high; k += direction) {
            int other = sums.loadOnOutput(k);
            if (other != CompiledProject.NONE && other != load) {
                return other;
            }
        }
        return CompiledProject.NONE;
    }
}
