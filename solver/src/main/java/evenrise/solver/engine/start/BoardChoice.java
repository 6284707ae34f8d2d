package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Chooses a board and panels for every block of loads that belongs together, by counting free outputs and slots: the
 * block with the fewest boards to choose from first, and of several boards the one that fills least. Where that leaves a
 * panel crowded or a block without a board, the blocks are levelled.
 */
final class BoardChoice {
    /** A board once begun is filled before the next, so that boards are left for loads that must not share one. */
    private static final double OPENING = 2;

    private final CompiledProject compiled;
    private final Filling filling;

    BoardChoice(CompiledProject compiled) {
        this.compiled = compiled;
        filling = new Filling(compiled);
    }

    int[] boards() {
        return filling.boards.boards();
    }

    int[] panels() {
        return filling.panels.panels();
    }

    void choose() {
        placeUnswitched(load -> compiled.allowedPanels[load].cardinality() == 1);
        List<int[]> blocks = blocks();
        blocks.forEach(this::choose);
        for (int[] block : new Levelling(compiled, filling, blocks).level()) {
            for (int load : block) {
                choose(new int[] {load});
            }
        }
        placeUnswitched(load -> filling.panels.panels()[load] == CompiledProject.NONE);
    }

    private void placeUnswitched(IntPredicate chosen) {
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (!compiled.switched[load] && chosen.test(load)) {
                filling.panels.enterEmptiest(load, compiled.allowedPanels[load]);
            }
        }
    }

    private List<int[]> blocks() {
        List<int[]> blocks = new ArrayList<>();
        for (int group = 0; group < compiled.groupCount; group++) {
            int[] members = compiled.groupMembers[group];
            if (compiled.groupIsLarge[group]) {
                Arrays.stream(members).forEach(load -> blocks.add(new int[] {load}));
            } else if (members.length > 0) {
                blocks.add(members);
            }
        }
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (compiled.needsOutput[load] && compiled.group[load] == CompiledProject.NONE) {
                blocks.add(new int[] {load});
            }
        }
        blocks.sort(Comparator.comparing((int[] block) -> Arrays.stream(block).noneMatch(this::isFixed))
                .thenComparing(block -> !isLarge(block))
                .thenComparing(block -> compiled.nearbyBoards[block[0]].length)
                .thenComparing(block -> -block.length)
                .thenComparing(block -> compiled.role[block[0]])
                .thenComparing(block -> block[0]));
        return blocks;
    }

    private boolean isFixed(int load) {
        return compiled.fixedBoard[load] != CompiledProject.NONE || compiled.fixedSlot[load] != CompiledProject.NONE;
    }

    private boolean isLarge(int[] block) {
        int group = compiled.group[block[0]];
        return group != CompiledProject.NONE && compiled.groupIsLarge[group];
    }

    /** Puts a block on the board that suits it best; false where none has room. */
    private boolean choose(int[] block) {
        int best = CompiledProject.NONE;
        double least = Double.POSITIVE_INFINITY;
        for (int board : compiled.nearbyBoards[block[0]]) {
            double cost = cost(block, board);
            if (cost < least) {
                least = cost;
                best = board;
            }
        }
        return best != CompiledProject.NONE && filling.put(block, best);
    }

    /** Infinite where the block does not fit. */
    private double cost(int[] block, int board) {
        double strain = filling.strain();
        boolean opens = !filling.boards.isOpen(board);
        if (!filling.put(block, board)) {
            return Double.POSITIVE_INFINITY;
        }
        double fullest = Math.max(filling.boards.part(board), filling.panels.fullestPart(block));
        double cost = fullest + filling.strain() - strain + (opens ? OPENING : 0);
        filling.remove(block);
        return cost;
    }
}
