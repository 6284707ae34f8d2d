package evenrise.solver.bounds;

import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How many loads boards can switch in a time. A board passes its outputs a step apart, so between two instants no more than
 * one and the shortest steps that fit; amplifiers have only the time from the first of them to the end. The loads of a group
 * that sits on one board are that board's alone.
 */
final class BoardRoom {
    private final BoundedProject subject;
    private final Map<String, Integer> boardsOfType = new HashMap<>();
    private final long switched;
    private final long amplifiers;
    private final Map<String, int[]> groups = new HashMap<>();
    private final int largest;

    BoardRoom(BoundedProject subject) {
        this.subject = subject;
        Project project = subject.project;
        List<Load> loads = project.loads().stream().filter(Load::switched).toList();
        this.switched = loads.size();
        this.amplifiers =
                loads.stream().filter(load -> load.role() == Role.AMPLIFIER).count();
        project.boards().forEach(board -> boardsOfType.merge(board.type(), 1, Integer::sum));
        this.largest = project.boardTypes().stream()
                .filter(type -> boardsOfType.containsKey(type.id()))
                .mapToInt(BoardType::outputs)
                .max()
                .orElse(0);
        for (Load load : loads) {
            load.shutdownGroup().ifPresent(id -> {
                int[] counts = groups.computeIfAbsent(id, key -> new int[2]);
                counts[0]++;
                counts[1] += load.role() == Role.AMPLIFIER ? 1 : 0;
            });
        }
    }

    /** Whether boards have passed enough outputs by the end, and enough since the first amplifier. */
    boolean suffices(Box box) {
        double end = subject.grid.latestSeconds(box.endTo());
        double time = end - subject.grid.earliestSeconds(box.amplifierFrom());
        return passed(end, true) >= switched
                && passed(time, false) >= amplifiers
                && groups.values().stream()
                        .filter(counts -> counts[0] <= largest)
                        .allMatch(counts ->
                                fits(counts[0], counts[0], end, true) && fits(counts[0], counts[1], time, false));
    }

    private long passed(double seconds, boolean fromStart) {
        return subject.project.boardTypes().stream()
                .mapToLong(type -> (long) boardsOfType.getOrDefault(type.id(), 0) * passed(type, seconds, fromStart))
                .sum();
    }

    private boolean fits(int outputs, int within, double seconds, boolean fromStart) {
        return subject.project.boardTypes().stream()
                .anyMatch(type -> type.outputs() >= outputs && passed(type, seconds, fromStart) >= within);
    }

    private static int passed(BoardType type, double seconds, boolean fromStart) {
        double step = least(type.stepSeconds());
        double left = seconds + BoundedProject.FORGIVEN_SECONDS - (fromStart ? least(type.startDelaySeconds()) : 0);
        if (left < 0) {
            return 0;
        }
        return step * type.outputs() <= left ? type.outputs() : Math.min(type.outputs(), 1 + (int) (left / step));
    }

    private static double least(List<Double> seconds) {
        return seconds.stream().mapToDouble(each -> each).min().orElse(0);
    }
}
