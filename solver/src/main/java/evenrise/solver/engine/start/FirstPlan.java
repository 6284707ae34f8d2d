package evenrise.solver.engine.start;

import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.Arrays;
import java.util.Comparator;

/**
 * Builds a plan to start from: boards and panels are chosen block by block, breakers are packed panel by panel, outputs
 * are filled board by board, and each board is given the setting that crowds the profile least.
 */
public final class FirstPlan {
    private final Plant plant;
    private final Situation situation;

    private FirstPlan(Plant plant) {
        this.plant = plant;
        this.situation = new Situation(plant);
    }

    public static Situation build(Plant plant) {
        return new FirstPlan(plant).build();
    }

    private Situation build() {
        BoardChoice choice = new BoardChoice(plant);
        choice.choose();
        new SlotPacking(situation).pack(choice.panels());
        int[][] outputs = new OutputFilling(plant).fill(choice.boards());
        BoardPacing pacing = new BoardPacing(situation, outputs);
        Integer[] order = new Integer[plant.boardCount];
        Arrays.setAll(order, i -> plant.boardOrder[i]);
        Arrays.sort(
                order,
                Comparator.comparingInt((Integer board) -> stageFrom(board, outputs))
                        .thenComparing(board -> depth(board))
                        .thenComparing(board -> stage(outputs[board]))
                        .thenComparing(board -> pacing.earliestMicros(outputs[board])));
        for (int board : order) {
            for (int k = 0; k < outputs[board].length; k++) {
                if (outputs[board][k] != Plant.NONE) {
                    situation.wire(outputs[board][k], plant.output(board, k));
                }
            }
            situation.settle();
            pacing.pace(board);
        }
        return situation;
    }

    /** How many boards come before it. */
    private int depth(int board) {
        int depth = 0;
        for (int b = plant.after[board]; b != Plant.NONE; b = plant.after[b]) {
            depth++;
        }
        return depth;
    }

    /** The earliest stage of a board and those behind it: what they hold up must not be timed before them. */
    private int stageFrom(int board, int[][] outputs) {
        int stage = stage(outputs[board]);
        for (int follower : plant.followers[board]) {
            stage = Math.min(stage, stageFrom(follower, outputs));
        }
        return stage;
    }

    /** Boards with processing loads are timed first, those with amplifiers last, since these wait for those. */
    private int stage(int[] loads) {
        return Arrays.stream(loads)
                .filter(load -> load != Plant.NONE)
                .map(load -> plant.role[load])
                .max()
                .orElse(Plant.AMPLIFIER);
    }
}
