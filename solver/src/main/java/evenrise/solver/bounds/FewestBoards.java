package evenrise.solver.bounds;

import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The fewest boards that can be in use: a bin-packing bound. What drops and what holds share no board; a group that fits the
 * largest board is one item, a larger one has boards of its own.
 */
final class FewestBoards {
    private FewestBoards() {}

    /** Time: loads × outputs of the largest board. */
    static int of(Project project) {
        ProjectIndex index = new ProjectIndex(project);
        int largest = index.largestBoardOutputs();
        if (largest == 0) {
            return 0;
        }
        Map<String, Integer> groups = new HashMap<>();
        Map<Boolean, List<Integer>> items = Map.of(true, new ArrayList<>(), false, new ArrayList<>());
        Map<String, Boolean> drops = new HashMap<>();
        int switched = 0;
        for (Load load : project.loads()) {
            if (load.switched()) {
                switched++;
                if (load.shutdownGroup().isPresent()) {
                    groups.merge(load.shutdownGroup().get(), 1, Integer::sum);
                    drops.put(load.shutdownGroup().get(), index.drops(load));
                } else {
                    items.get(index.drops(load)).add(1);
                }
            }
        }
        int boards = 0;
        for (Map.Entry<String, Integer> group : groups.entrySet()) {
            if (group.getValue() > largest) {
                boards += roundedUp(group.getValue(), largest);
            } else {
                items.get(drops.get(group.getKey())).add(group.getValue());
            }
        }
        boards += bins(items.get(true), largest) + bins(items.get(false), largest);
        return Math.max(boards, largestFirst(project, index, switched));
    }

    /**
     * Bins that items need, by the dual feasible functions that count a large item as a whole bin and a small one as
     * nothing (Fekete and Schepers 2001, Mathematical Programming 91:11–31; from memory).
     */
    private static int bins(List<Integer> items, int capacity) {
        int most = 0;
        for (int small = 0; 2 * small <= capacity; small++) {
            int sum = 0;
            for (int item : items) {
                sum += item > capacity - small ? capacity : item >= small ? item : 0;
            }
            most = Math.max(most, roundedUp(sum, capacity));
        }
        return most;
    }

    /** The same of boards of any kind: until their outputs suffice for all loads that need one. */
    static int byOutputs(Project project) {
        int outputs = (int) project.loads().stream()
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .count();
        return largestFirst(project, new ProjectIndex(project), outputs);
    }

    /** Boards until their outputs suffice for all loads, those with the most outputs first. */
    private static int largestFirst(Project project, ProjectIndex index, int switched) {
        List<Integer> outputs = project.boards().stream()
                .map(index::typeOf)
                .map(BoardType::outputs)
                .sorted(Comparator.reverseOrder())
                .toList();
        int left = switched;
        int boards = 0;
        while (left > 0 && boards < outputs.size()) {
            left -= outputs.get(boards++);
        }
        return boards;
    }

    private static int roundedUp(int items, int capacity) {
        return (items + capacity - 1) / capacity;
    }
}
