package evenrise.solver.engine.start;

import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.Plant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Puts the loads of each board onto its outputs: group by group, what must come on early first. */
final class OutputFilling {
    private final Plant plant;
    private final int[] depth;

    OutputFilling(Plant plant) {
        this.plant = plant;
        depth = new int[plant.loadCount()];
        boolean deeper = true;
        for (int round = 0; deeper && round < plant.loadCount(); round++) {
            deeper = false;
            for (int pair = 0; pair < plant.pairs.kind.length; pair++) {
                int behind = plant.pairs.second[pair];
                int least = depth[plant.pairs.first[pair]] + 1;
                if (plant.pairs.kind[pair] == Pairs.ORDER && depth[behind] < least) {
                    depth[behind] = least;
                    deeper = true;
                }
            }
        }
    }

    /** For each board the load on each output, from the board of each load; {@link Plant#NONE} where there is none. */
    int[][] fill(int[] boards) {
        List<List<Integer>> byBoard = new ArrayList<>();
        for (int board = 0; board < plant.boardCount; board++) {
            byBoard.add(new ArrayList<>());
        }
        for (int load = 0; load < boards.length; load++) {
            if (boards[load] != Plant.NONE) {
                byBoard.get(boards[load]).add(load);
            }
        }
        int[][] filled = new int[plant.boardCount][];
        for (int board = 0; board < filled.length; board++) {
            filled[board] = fill(board, byBoard.get(board));
        }
        return filled;
    }

    private int[] fill(int board, List<Integer> loads) {
        int[] outputs = new int[plant.outputCount(board)];
        Arrays.fill(outputs, Plant.NONE);
        List<Integer> free = new ArrayList<>();
        for (int load : loads) {
            int fixed = plant.fixedOutput[load] - 1;
            if (fixed < 0) {
                free.add(load);
            } else if (outputs[fixed] == Plant.NONE) {
                outputs[fixed] = load;
            } // else another load is fixed to it, too: the search finds this one another board
        }
        int[] earliest = new int[plant.groupCount + 1];
        Arrays.fill(earliest, Integer.MAX_VALUE);
        for (int load : loads) {
            earliest[run(load)] = Math.min(earliest[run(load)], urgency(load));
        }
        free.sort(Comparator.comparingInt(
                        (Integer load) -> plant.group[load] == Plant.NONE ? urgency(load) : earliest[run(load)])
                .thenComparing(load -> plant.group[load])
                .thenComparing(this::urgency)
                .thenComparing(load -> -excessAmps(load))
                .thenComparing(load -> load));
        keepFixedRunsWhole(outputs, free);
        int next = 0;
        int spare = outputs.length - loads.size();
        int last = Plant.NONE;
        int latest = free.stream().mapToInt(load -> plant.role[load]).max().orElse(0);
        for (int load : free) {
            // The last role on a board waits for others on other boards: unused outputs before it are time.
            if (plant.role[load] == latest && last != Plant.NONE && plant.role[last] != latest) {
                next += spare;
                spare = 0;
            }
            while (outputs[next] != Plant.NONE) {
                next++;
            }
            outputs[next++] = load;
            last = load;
        }
        return outputs;
    }

    /** Where one of a group has a fixed output, the others take the outputs behind it, then those before it. */
    private void keepFixedRunsWhole(int[] outputs, List<Integer> free) {
        for (int k = 0; k < outputs.length; k++) {
            int group = outputs[k] == Plant.NONE ? Plant.NONE : plant.group[outputs[k]];
            if (group == Plant.NONE || plant.fixedOutput[outputs[k]] != k + 1) {
                continue;
            }
            List<Integer> others =
                    free.stream().filter(load -> plant.group[load] == group).toList();
            int behind = k + 1;
            int before = k - 1;
            for (int load : others) {
                if (behind < outputs.length && outputs[behind] == Plant.NONE) {
                    outputs[behind++] = load;
                } else if (before >= 0 && outputs[before] == Plant.NONE) {
                    outputs[before--] = load;
                } else {
                    continue;
                }
                free.remove(Integer.valueOf(load));
            }
        }
    }

    private int run(int load) {
        return plant.group[load] == Plant.NONE ? plant.groupCount : plant.group[load];
    }

    private int urgency(int load) {
        return plant.role[load] * plant.loadCount() + depth[load];
    }

    private double excessAmps(int load) {
        return plant.loads[load].inrushAmps() - Math.sqrt(2) * plant.loads[load].idleAmps();
    }
}
