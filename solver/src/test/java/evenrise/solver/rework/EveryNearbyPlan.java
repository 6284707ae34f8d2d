package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;

/** Judges every plan of a tiny project by the referee alone and keeps the least objective for each number of moves. */
final class EveryNearbyPlan {
    private final Project project;
    private final Consumer<Plan> taker;
    private final List<BoardSetting> settings = new ArrayList<>();
    private final List<Assignment> assignments = new ArrayList<>();

    private EveryNearbyPlan(Project project, Consumer<Plan> taker) {
        this.project = project;
        this.taker = taker;
    }

    /** Moves to least objective, where fewer moves cannot reach it; only plans that keep every rule. */
    static TreeMap<Integer, Double> front(Project project, Plan built) {
        return front(project, built, Changes::moves);
    }

    /** The same by another measure of changes than their number. */
    static <K extends Comparable<K>> TreeMap<K, Double> front(
            Project project, Plan built, Function<Changes, K> measure) {
        TreeMap<K, Double> best = new TreeMap<>();
        each(project, plan -> {
            Verdict verdict = Referee.judge(project, PlanFinisher.timed(project, plan));
            if (verdict.violations().isEmpty()) {
                best.merge(
                        measure.apply(Changes.between(new ProjectIndex(project), built, plan)),
                        verdict.metrics().objective(),
                        Math::min);
            }
        });
        TreeMap<K, Double> front = new TreeMap<>();
        best.forEach((moves, objective) -> {
            if (front.isEmpty() || objective < front.lastEntry().getValue() - Front.EQUAL_AMPS) {
                front.put(moves, objective);
            }
        });
        return front;
    }

    /** Ends a look at every plan where there is no need to go on. */
    private static final class Found extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final transient Plan plan;

        Found(Plan plan) {
            super(null, null, false, false);
            this.plan = plan;
        }
    }

    static Optional<Plan> first(Project project, Predicate<Plan> wanted) {
        try {
            each(project, plan -> {
                if (wanted.test(plan)) {
                    throw new Found(plan);
                }
            });
            return Optional.empty();
        } catch (Found end) {
            return Optional.of(end.plan);
        }
    }

    static void each(Project project, Consumer<Plan> taker) {
        new EveryNearbyPlan(project, taker).setBoards(0);
    }

    private void setBoards(int next) {
        if (next == project.boards().size()) {
            assign(0);
            return;
        }
        Board board = project.boards().get(next);
        for (double delay : type(board).startDelaySeconds()) {
            for (double step : type(board).stepSeconds()) {
                settings.add(new BoardSetting(board.id(), delay, step));
                setBoards(next + 1);
                settings.remove(settings.size() - 1);
            }
        }
    }

    private void assign(int next) {
        if (next == project.loads().size()) {
            taker.accept(Plan.builder()
                    .boards(List.copyOf(settings))
                    .assignments(List.copyOf(assignments))
                    .build());
            return;
        }
        Load load = project.loads().get(next);
        for (Panel panel : project.panels()) {
            for (int slot = 1; slot <= panel.slots(); slot++) {
                if (!load.switched()) {
                    put(next, load, panel, slot, Optional.empty(), OptionalInt.empty());
                    continue;
                }
                for (Board board : project.boards()) {
                    for (int output = 1; output <= type(board).outputs(); output++) {
                        put(next, load, panel, slot, Optional.of(board.id()), OptionalInt.of(output));
                    }
                }
            }
        }
    }

    private void put(int next, Load load, Panel panel, int slot, Optional<String> board, OptionalInt output) {
        boolean isTaken = assignments.stream()
                .anyMatch(each -> each.panel().equals(panel.id()) && each.slot() == slot
                        || board.isPresent()
                                && each.board().equals(board)
                                && each.output().equals(output));
        if (!isTaken) {
            assignments.add(Assignment.builder()
                    .load(load.id())
                    .panel(panel.id())
                    .slot(slot)
                    .board(board)
                    .output(output)
                    .build());
            assign(next + 1);
            assignments.remove(assignments.size() - 1);
        }
    }

    private BoardType type(Board board) {
        return project.boardTypes().stream()
                .filter(type -> type.id().equals(board.type()))
                .findFirst()
                .orElseThrow();
    }
}
