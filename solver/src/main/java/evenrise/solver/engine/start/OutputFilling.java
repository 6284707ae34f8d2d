package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Pairs;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Puts the loads of each board onto its outputs: group by group, what must come on early first. */
final class OutputFilling {
    private final CompiledProject compiled;
    private final int[] depth;

    OutputFilling(CompiledProject compiled) {
        this.compiled = compiled;
        depth = new int[compiled.loadCount()];
        boolean deeper = true;
        for (int round = 0; deeper && round < compiled.loadCount(); round++) {
            deeper = false;
            for (int pair = 0; pair < compiled.pairs.kind.length; pair++) {
                int behind = compiled.pairs.second[pair];
                int least = depth[compiled.pairs.first[pair]] + 1;
                if (compiled.pairs.kind[pair] == Pairs.ORDER && depth[behind] < least) {
                    depth[behind] = least;
                    deeper = true;
                }
            }
        }
    }

    /** For each board the load on each output, from the board of each load; {@link CompiledProject#NONE} where there is none. */
    int[][] fill(int[] boards) {
        List<List<Integer>> byBoard = new ArrayList<>();
        for (int board = 0; board < compiled.boardCount; board++) {
            byBoard.add(new ArrayList<>());
        }
        for (int load = 0; load < boards.length; load++) {
            if (boards[load] != CompiledProject.NONE) {
                byBoard.get(boards[load]).add(load);
            }
        }
        int[][] filled = new int[compiled.boardCount][];
        for (int board = 0; board < filled.length; board++) {
            filled[board] = fill(board, byBoard.get(board));
        }
        return filled;
    }

    private int[] fill(int board, List<Integer> loads) {
        int[] outputs = new int[compiled.outputCount(board)];
        Arrays.fill(outputs, CompiledProject.NONE);
        List<Integer> free = new ArrayList<>();
        for (int load : loads) {
            int fixed = compiled.fixedOutput[load] - 1;
            if (fixed < 0) {
                free.add(load);
            } else if (outputs[fixed] == CompiledProject.NONE) {
                outputs[fixed] = load;
            } // else another load is fixed to it, too: the search finds this one another board
        }
        int[] earliest = new int[compiled.groupCount + 1];
        Arrays.fill(earliest, Integer.MAX_VALUE);
        for (int load : loads) {
            earliest[run(load)] = Math.min(earliest[run(load)], urgency(load));
        }
        free.sort(Comparator.comparingInt((Integer load) ->
                        compiled.group[load] == CompiledProject.NONE ? urgency(load) : earliest[run(load)])
                .thenComparing(load -> compiled.group[load])
                .thenComparing(this::urgency)
                .thenComparing(load -> -excessAmps(load))
                .thenComparing(load -> load));
        keepFixedRunsWhole(outputs, free);
        int next = 0;
        int spare = outputs.length - loads.size();
        int last = CompiledProject.NONE;
        int latest = free.stream().mapToInt(load -> compiled.role[load]).max().orElse(0);
        for (int load : free) {
            // The last role on a board waits for others on other boards: unused outputs before it are time.
            if (compiled.role[load] == latest && last != CompiledProject.NONE && compiled.role[last] != latest) {
                next += spare;
                spare = 0;
            }
            while (outputs[next] != CompiledProject.NONE) {
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
            int group = outputs[k] == CompiledProject.NONE ? CompiledProject.NONE : compiled.group[outputs[k]];
            if (group == CompiledProject.NONE || compiled.fixedOutput[outputs[k]] != k + 1) {
                continue;
            }
            List<Integer> others =
                    free.stream().filter(load -> compiled.group[load] == group).toList();
            int behind = k + 1;
            int before = k - 1;
            for (int load : others) {
                if (behind < outputs.length && outputs[behind] == CompiledProject.NONE) {
                    outputs[behind++] = load;
                } else if (before >= 0 && outputs[before] == CompiledProject.NONE) {
                    outputs[before--] = load;
                } else {
                    continue;
                }
                free.remove(Integer.valueOf(load));
            }
        }
    }

    private int run(int load) {
        return compiled.group[load] == CompiledProject.NONE ? compiled.groupCount : compiled.group[load];
    }

    private int urgency(int load) {
        return compiled.role[load] * compiled.loadCount() + depth[load];
    }

    private double excessAmps(int load) {
        return compiled.loads[load].inrushAmps() - compiled.loads[load].baseAmps();
    }
}
