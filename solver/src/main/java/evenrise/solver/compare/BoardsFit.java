package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Whether boards of given kinds can hold the shutdown groups at all: bin packing with boards of several sizes. A group that
 * fits the largest board sits on one; a larger one has boards of its own; what drops and what holds share no board; loads
 * without a group hold and fill what is left. Decided by trying every packing that differs, with a limit on the tries.
 */
final class BoardsFit {
    /** After so many tries a packing counts as possible: the search decides. */
    private static final int MOST_TRIES = 200_000;

    private record Group(int size, boolean drops) {}

    private final List<Group> groups = new ArrayList<>();
    private final int singles;
    private final int largest;
    private int tries;

    private BoardsFit(Project project, List<BoardType> kinds) {
        Map<String, ShutdownGroup> stated = new HashMap<>();
        project.shutdownGroups().forEach(group -> stated.put(group.id(), group));
        Map<String, Integer> sizes = new HashMap<>();
        int alone = 0;
        for (Load load : project.loads()) {
            if (load.switched() && load.shutdownGroup().isPresent()) {
                sizes.merge(load.shutdownGroup().get(), 1, Integer::sum);
            } else if (load.switched()) {
                alone++;
            }
        }
        sizes.forEach((id, size) -> groups.add(new Group(size, stated.get(id).onEmergency() == OnEmergency.DROP)));
        groups.sort(Comparator.comparingInt(Group::size).reversed());
        singles = alone;
        largest = kinds.stream().mapToInt(BoardType::outputs).max().orElse(0);
    }

    /** @param boards of which the largest is the largest of the project */
    static boolean fits(Project project, List<BoardType> boards) {
        BoardsFit fit = new BoardsFit(project, boards);
        int[] free = boards.stream().mapToInt(BoardType::outputs).toArray();
        return fit.place(0, free, new int[free.length]);
    }

    /** @param use of each board: 0 none yet, 1 holds, 2 drops, 3 closed to others */
    private boolean place(int next, int[] free, int[] use) {
        if (++tries > MOST_TRIES) {
            return true;
        }
        if (next == groups.size()) {
            int left = 0;
            for (int i = 0; i < free.length; i++) {
                left += use[i] <= 1 ? free[i] : 0;
            }
            return left >= singles;
        }
        Group group = groups.get(next);
        return group.size() > largest
                ? placeLarge(next, group, group.size(), 0, free, use)
                : placeWhole(next, group, free, use);
    }

    private boolean placeWhole(int next, Group group, int[] free, int[] use) {
        int mark = group.drops() ? 2 : 1;
        Set<Integer> tried = new HashSet<>();
        for (int i = 0; i < free.length; i++) {
            boolean isOpen = use[i] == 0 || use[i] == mark;
            // Boards that are as free and used alike are the same choice.
            if (isOpen && free[i] >= group.size() && tried.add(free[i] * 4 + use[i])) {
                int before = use[i];
                free[i] -= group.size();
                use[i] = mark;
                if (place(next + 1, free, use)) {
                    return true;
                }
                free[i] += group.size();
                use[i] = before;
            }
        }
        return false;
    }

    /** Takes whole boards from {@code from} on until the group has room. */
    private boolean placeLarge(int next, Group group, int left, int from, int[] free, int[] use) {
        if (left <= 0) {
            return place(next + 1, free, use);
        }
        Set<Integer> tried = new HashSet<>();
        for (int i = from; i < free.length; i++) {
            if (use[i] == 0 && tried.add(free[i])) {
                use[i] = 3;
                if (placeLarge(next, group, left - free[i], i + 1, free, use)) {
                    return true;
                }
                use[i] = 0;
            }
        }
        return false;
    }
}
