package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;
import java.util.Arrays;
import java.util.Comparator;

/**
 * Builds a plan to start from: boards and panels are chosen block by block, breakers are packed panel by panel, outputs
 * are filled board by board, and each board is given the setting that crowds the profile least.
 */
public final class FirstPlan {
    private final CompiledProject compiled;
    private final PlanSums sums;

    private FirstPlan(CompiledProject compiled) {
        this.compiled = compiled;
        this.sums = new PlanSums(compiled);
    }

    public static PlanSums build(CompiledProject compiled) {
        return new FirstPlan(compiled).build();
    }

    private PlanSums build() {
        BoardChoice choice = new BoardChoice(compiled);
        choice.choose();
        new SlotPacking(sums).pack(choice.panels());
        int[][] outputs = new OutputFilling(compiled).fill(choice.boards());
        BoardPacing pacing = new BoardPacing(sums, outputs);
        Integer[] order = new Integer[compiled.boardCount];
        Arrays.setAll(order, i -> compiled.boardOrder[i]);
        Arrays.sort(
                order,
                Comparator.comparingInt((Integer board) -> stageFrom(board, outputs))
                        .thenComparing(board -> depth(board))
                        .thenComparing(board -> stage(outputs[board]))
                        .thenComparing(board -> pacing.earliestMicros(outputs[board])));
        for (int board : order) {
            for (int k = 0; k < outputs[board].length; k++) {
                if (outputs[board][k] != CompiledProject.NONE) {
                    sums.wire(outputs[board][k], compiled.output(board, k));
                }
            }
            sums.settle();
            pacing.pace(board);
        }
        return sums;
    }

    /** How many boards come before it. */
    private int depth(int board) {
        int depth = 0;
        for (int b = compiled.after[board]; b != CompiledProject.NONE; b = compiled.after[b]) {
            depth++;
        }
        return depth;
    }

    /** The earliest stage of a board and those behind it: what they hold up must not be timed before them. */
    private int stageFrom(int board, int[][] outputs) {
        int stage = stage(outputs[board]);
        for (int follower : compiled.followers[board]) {
            stage = Math.min(stage, stageFrom(follower, outputs));
        }
        return stage;
    }

    /** Boards with processing loads are timed first, those with amplifiers last, since these wait for those. */
    private int stage(int[] loads) {
        return Arrays.stream(loads)
                .filter(load -> load != CompiledProject.NONE)
                .map(load -> compiled.role[load])
                .max()
                .orElse(CompiledProject.AMPLIFIER);
    }
}
