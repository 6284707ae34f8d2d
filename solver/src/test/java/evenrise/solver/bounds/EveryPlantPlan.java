package evenrise.solver.bounds;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * Every plan of a tiny plant, one after another: each setting of each board, each slot, each output and, on boards whose
 * outputs have times of their own, each time. The referee alone says which keep the rules.
 */
public final class EveryPlantPlan {
    private final Project project;
    private final ProjectIndex index;
    private final List<List<BoardSetting>> settings = new ArrayList<>();
    private final List<List<Assignment>> ways = new ArrayList<>();
    private final List<BoardSetting> set = new ArrayList<>();
    private final List<Assignment> assigned = new ArrayList<>();

    private EveryPlantPlan(Project project) {
        this.project = project;
        this.index = new ProjectIndex(project);
        project.boards().forEach(board -> settings.add(settings(board)));
        project.loads().forEach(load -> ways.add(ways(load)));
    }

    /** At most so many plans, slots and outputs that are taken twice among them. */
    public static long count(Project project) {
        EveryPlantPlan all = new EveryPlantPlan(project);
        double count = 1;
        for (List<?> each : all.settings) {
            count *= each.size();
        }
        for (List<?> each : all.ways) {
            count *= each.size();
        }
        return (long) count;
    }

    /**
     * Shows all plans that keep every rule.
     *
     * @param earlier plan that moves are counted from
     * @param sound takes each with what the referee says of it
     */
    public static void sound(Project project, Optional<Plan> earlier, BiConsumer<Plan, Verdict> sound) {
        EveryPlantPlan all = new EveryPlantPlan(project);
        all.walk(plan -> {
            Verdict verdict = Referee.judge(Layout.of(all.index, plan), earlier);
            if (verdict.violations().isEmpty()) {
                sound.accept(plan, verdict);
            }
        });
    }

    /** Whatever keeps the rules or not: the first plan of all; empty where a load has no place at all. */
    static Optional<Plan> first(Project project) {
        List<Plan> found = new ArrayList<>();
        new EveryPlantPlan(project).walk(plan -> {
            if (found.isEmpty()) {
                found.add(plan);
            }
        });
        return found.stream().findFirst();
    }

    private void walk(Consumer<Plan> each) {
        if (set.size() < settings.size()) {
            for (BoardSetting setting : settings.get(set.size())) {
                set.add(setting);
                walk(each);
                set.remove(set.size() - 1);
            }
        } else if (assigned.size() < ways.size()) {
            for (Assignment way : ways.get(assigned.size())) {
                if (assigned.stream().noneMatch(other -> collide(way, other))) {
                    assigned.add(way);
                    walk(each);
                    assigned.remove(assigned.size() - 1);
                }
            }
        } else {
            Plan bare = Plan.builder()
                    .boards(List.copyOf(set))
                    .assignments(List.copyOf(assigned))
                    .build();
            each.accept(PlanFinisher.timed(project, bare));
        }
    }

    private static boolean collide(Assignment one, Assignment other) {
        boolean isSameSlot = one.panel().equals(other.panel()) && one.slot() == other.slot();
        boolean isSameOutput = one.board().isPresent()
                && one.board().equals(other.board())
                && one.output().equals(other.output());
        return isSameSlot || isSameOutput;
    }

    private List<BoardSetting> settings(Board board) {
        BoardType type = index.typeOf(board);
        if (type.isTimedByOutput()) {
            return List.of(BoardSetting.ofEach(board.id()));
        }
        List<BoardSetting> all = new ArrayList<>();
        for (double delay : type.startDelaySeconds()) {
            for (double step : type.stepSeconds()) {
                all.add(new BoardSetting(board.id(), delay, step));
            }
        }
        return all;
    }

    private List<Assignment> ways(Load load) {
        List<Assignment> all = new ArrayList<>();
        for (Panel panel : project.panels()) {
            for (int slot = 1; slot <= panel.slots(); slot++) {
                var seat =
                        Assignment.builder().load(load.id()).panel(panel.id()).slot(slot);
                if (!load.switched() || load.comesWith().isPresent()) {
                    all.add(seat.board(Optional.empty())
                            .output(OptionalInt.empty())
                            .build());
                } else {
                    project.boards().forEach(board -> outputs(board, seat.build(), all));
                }
            }
        }
        return all;
    }

    private void outputs(Board board, Assignment seat, List<Assignment> all) {
        BoardType type = index.typeOf(board);
        for (int output = 1; output <= type.outputs(); output++) {
            Assignment switched = seat.withBoard(Optional.of(board.id())).withOutput(OptionalInt.of(output));
            if (type.isTimedByOutput()) {
                for (double begin : begins(board)) {
                    for (double offered : type.timesSeconds().orElseThrow().all()) {
                        all.add(switched.withOnSeconds(OptionalDouble.of(begin + offered)));
                    }
                }
            } else {
                all.add(switched);
            }
        }
    }

    /** All times at which a board may begin, and maybe some at which it cannot. */
    private TreeSet<Double> begins(Board board) {
        Optional<Board> before = board.after().flatMap(index::board);
        if (before.isEmpty()) {
            return new TreeSet<>(List.of(0.0));
        }
        TreeSet<Double> all = new TreeSet<>();
        BoardType type = index.typeOf(before.get());
        for (double begin : begins(before.get())) {
            all.add(begin);
            if (type.isTimedByOutput()) {
                type.timesSeconds().orElseThrow().all().forEach(offered -> all.add(begin + offered));
            } else {
                for (BoardSetting setting : settings(before.get())) {
                    for (int output = 0; output < type.outputs(); output++) {
                        all.add(begin + setting.delaySeconds() + output * setting.betweenSeconds());
                    }
                }
            }
        }
        return all;
    }
}
