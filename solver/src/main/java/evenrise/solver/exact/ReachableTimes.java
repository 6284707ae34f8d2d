package evenrise.solver.exact;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Which times, in microseconds, each output can come on at under any setting; none past the longest duration. */
final class ReachableTimes {
    private static final int MOST_TIMES = 20_000;

    private final Project project;
    private final Map<String, BoardType> types = new HashMap<>();
    private final Map<String, NavigableSet<Long>> begins = new HashMap<>();
    private final Map<String, List<NavigableSet<Long>>> outputs = new HashMap<>();
    private final NavigableMap<Long, Integer> outputsAt = new TreeMap<>();
    private final long latest;

    ReachableTimes(Project project) {
        this.project = project;
        latest = project.maxDurationSeconds().isPresent()
                ? (long) Math.floor(
                        (project.maxDurationSeconds().getAsDouble() + Tolerances.SECONDS) * ExactModelUnits.PER_SECOND)
                : Long.MAX_VALUE;
        project.boardTypes().forEach(type -> types.put(type.id(), type));
        project.boards().forEach(this::reach);
        outputs.values()
                .forEach(board ->
                        board.forEach(output -> output.forEach(time -> outputsAt.merge(time, 1, Integer::sum))));
    }

    BoardType type(Board board) {
        return types.get(board.type());
    }

    /** Times at which a board can begin. */
    NavigableSet<Long> begins(Board board) {
        return begins.get(board.id());
    }

    /** Times of an output, counted from 1. */
    NavigableSet<Long> of(Board board, int number) {
        return outputs.get(board.id()).get(number - 1);
    }

    /** Times of every output that the load may use. */
    NavigableSet<Long> of(Load load) {
        NavigableSet<Long> times = new TreeSet<>();
        for (Board board : project.boards()) {
            for (int number = 1; number <= type(board).outputs(); number++) {
                if (mayUse(load, board, number)) {
                    times.addAll(of(board, number));
                }
            }
        }
        return times;
    }

    /** Whether the load by itself may be on the output: reach, allowed panels and what is fixed. */
    static boolean mayUse(Load load, Board board, int number) {
        return load.fixed().board().orElse(board.id()).equals(board.id())
                && load.fixed().output().orElse(number) == number
                && board.reaches()
                        .contains(load.fixed().panel().orElse(board.reaches().get(0)))
                && (load.panels().isEmpty() || !Collections.disjoint(load.panels(), board.reaches()));
    }

    int outputsThatReach(long time) {
        return outputsAt.getOrDefault(time, 0);
    }

    private void reach(Board board) {
        if (begins.containsKey(board.id())) {
            return;
        }
        NavigableSet<Long> begin = new TreeSet<>(Set.of(0L));
        board.after().ifPresent(prior -> {
            Board before = project.boards().stream()
                    .filter(each -> each.id().equals(prior))
                    .findFirst()
                    .orElseThrow();
            reach(before);
            begin.clear();
            begin.addAll(begins.get(prior));
            outputs.get(prior).forEach(begin::addAll);
        });
        begins.put(board.id(), begin);
        BoardType type = type(board);
        List<NavigableSet<Long>> own = new ArrayList<>();
        for (int number = 0; number < type.outputs(); number++) {
            NavigableSet<Long> times = new TreeSet<>();
            for (double delay : type.startDelaySeconds()) {
                for (double step : type.stepSeconds()) {
                    long after = ExactModelUnits.exactly(delay, ExactModelUnits.PER_SECOND)
                            + number * ExactModelUnits.exactly(step, ExactModelUnits.PER_SECOND);
                    begin.stream()
                            .map(from -> from + after)
                            .filter(time -> time <= latest)
                            .forEach(times::add);
                }
            }
            if (times.size() > MOST_TIMES) {
                throw new Unfit("board " + board.id() + " can reach more than " + MOST_TIMES + " times");
            }
            own.add(times);
        }
        outputs.put(board.id(), own);
    }
}
