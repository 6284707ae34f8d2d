package evenrise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Project;
import evenrise.solver.engine.search.Plans;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The exact model and the referee, which share no rule, say the same of plans good and bad. */
class ExactModelTest {
    private static final int WALK = 15_000;
    private static final int FAULTLESS_A_PROJECT = 8;

    /** Every rule that a plan with one assignment a load, timed by its own outputs, can break. */
    private static final Set<String> RULES = Set.of(
            "output",
            "reach",
            "slot",
            "switched-slot",
            "panel-allowed",
            "fixed",
            "apart",
            "same-phase",
            "processing-first",
            "amplifiers-last",
            "order",
            "emergency",
            "group-whole",
            "group-run",
            "group-panel",
            "rating",
            "neutral",
            "inrush-limit",
            "duration");

    @Test
    void refusesPlansThatBreakASingleRuleAndKnowsWhatFaultlessOnesCost() {
        Set<String> refused = new TreeSet<>();
        for (long seed : ExactOptimumTest.SEEDS) {
            Project project = ExactModelProject.of(seed);
            Map<String, Integer> seen = new HashMap<>();
            Random random = new Random(seed);
            Plan start = Exact.anyPlan(project);
            for (int i = 0; i < WALK; i++) {
                Plan plan = altered(project, start, random, 1 + i % 3);
                Set<String> broken =
                        plan.violations().stream().map(BrokenRule::rule).collect(Collectors.toSet());
                String what = broken.isEmpty() ? "" : broken.iterator().next();
                int before = seen.getOrDefault(what, 0);
                if (broken.size() <= 1 && before < (broken.isEmpty() ? FAULTLESS_A_PROJECT : 1)) {
                    seen.put(what, before + 1);
                    compare(project, plan);
                }
                if (broken.isEmpty()) {
                    start = plan;
                }
            }
            refused.addAll(seen.keySet());
        }
        refused.remove("");

        assertThat(refused).containsExactlyInAnyOrderElementsOf(RULES);
    }

    private static void compare(Project project, Plan plan) {
        OptionalDouble says = Exact.objectiveOf(project, plan);

        assertThat(says.isEmpty())
                .as("%s: refused, broken is %s", project.name(), plan.violations())
                .isEqualTo(!plan.violations().isEmpty());
        says.ifPresent(amps -> assertThat(plan.metrics().orElseThrow().objective() - amps)
                .as("%s: how much cheaper the model finds it, in ampere-equivalents", project.name())
                .isBetween(-1e-6, ExactModel.roundingAmps(project) + 1e-6));
    }

    /** The plan after blind changes, each of a place, an output or a setting, or an exchange of two. */
    private static Plan altered(Project project, Plan plan, Random random, int changes) {
        List<Assignment> loads = new ArrayList<>(plan.assignments());
        List<BoardSetting> settings = new ArrayList<>(plan.boards());
        for (int i = 0; i < changes; i++) {
            int one = random.nextInt(loads.size());
            int other = random.nextInt(loads.size());
            Assignment a = loads.get(one);
            Assignment b = loads.get(other);
            int which = random.nextInt(settings.size());
            Board board = project.boards().get(which);
            BoardType type = project.boardTypes().stream()
                    .filter(each -> each.id().equals(board.type()))
                    .findFirst()
                    .orElseThrow();
            boolean switched = a.board().isPresent();
            switch (random.nextInt(5)) {
                case 0 -> {
                    loads.set(one, at(a, b.panel(), b.slot()));
                    loads.set(other, one == other ? loads.get(one) : at(b, a.panel(), a.slot()));
                }
                case 1 -> {
                    if (switched && b.board().isPresent() && one != other) {
                        loads.set(one, on(a, b.board(), b.output()));
                        loads.set(other, on(b, a.board(), a.output()));
                    }
                }
                case 2 -> loads.set(one, at(a, any(project.panels(), random).id(), 1 + random.nextInt(14)));
                case 3 -> {
                    if (switched) {
                        OptionalInt output = OptionalInt.of(1 + random.nextInt(type.outputs()));
                        loads.set(one, on(a, Optional.of(board.id()), output));
                    }
                }
                default ->
                    settings.set(
                            which,
                            new BoardSetting(
                                    board.id(),
                                    any(type.startDelaySeconds(), random),
                                    any(type.stepSeconds(), random)));
            }
        }
        Plan bare = Plan.builder().boards(settings).assignments(loads).build();
        return Plans.judged(project, bare);
    }

    private static <T> T any(List<T> from, Random random) {
        return from.get(random.nextInt(from.size()));
    }

    private static Assignment at(Assignment it, String panel, int slot) {
        return place(it.load(), panel, slot, it.board(), it.output());
    }

    private static Assignment on(Assignment it, Optional<String> board, OptionalInt output) {
        return place(it.load(), it.panel(), it.slot(), board, output);
    }

    private static Assignment place(String load, String panel, int slot, Optional<String> board, OptionalInt output) {
        return Assignment.builder()
                .load(load)
                .panel(panel)
                .slot(slot)
                .board(board)
                .output(output)
                .build();
    }
}
