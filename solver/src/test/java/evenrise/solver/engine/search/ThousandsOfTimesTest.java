package evenrise.solver.engine.search;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.BoardBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Eight boards in a chain, whose outputs may each come on from 0 to 120 s by 0.01 s after their board's start: 96,000
 * multiples of 0.01 s up to 960 s, more than instants are kept.
 */
class ThousandsOfTimesTest {
    private static final int BOARDS = 8;

    private static Project project(boolean hasStepped, OptionalDouble fixed) {
        List<BoardBuilder> boards = new ArrayList<>();
        for (int i = 0; i < BOARDS; i++) {
            BoardBuilder board = aBoard("B" + i).type(hasStepped && i == 1 ? "stepped" : "each");
            boards.add(i == 0 ? board : board.after("B" + (i - 1)));
        }
        List<LoadBuilder> loads = new ArrayList<>();
        for (int i = 0; i < 2 * BOARDS; i++) {
            LoadBuilder load =
                    aLoad("L" + i).inrushPeakAmps(60 + i).inrushHalfMillis(40).fixedBoard("B" + i / 2);
            // Ready at odd milliseconds, so that instants that are a little off break the order.
            loads.add(i < 4 ? load.processing().settleSeconds(1.007 + 0.0013 * i) : i < 10 ? load : load.amplifier());
        }
        fixed.ifPresent(seconds -> loads.set(
                7,
                loads.get(7)
                        .fixed(FixedPlace.builder()
                                .onSeconds(OptionalDouble.of(seconds))
                                .build())));
        return aProject()
                .timingToleranceSeconds(0)
                .panels(aPanel("P1").slots(24))
                .boardTypes(
                        aBoardType("each")
                                .outputs(2)
                                .with(it -> it.timing(BoardTiming.EACH)
                                        .startDelaySeconds(List.of())
                                        .stepSeconds(List.of())
                                        .timesSeconds(Optional.of(OfferedTimes.builder()
                                                .from(OptionalDouble.of(0))
                                                .to(OptionalDouble.of(120))
                                                .by(OptionalDouble.of(0.01))
                                                .build()))),
                        aBoardType("stepped")
                                .outputs(2)
                                .startDelaySeconds(0, 0.5, 1.25)
                                .stepSeconds(0.25, 0.5))
                .boards(boards.toArray(BoardBuilder[]::new))
                .loads(loads)
                .build();
    }

    /** The search's word on a plan is the referee's, and it finds one that keeps every rule. */
    @ParameterizedTest(name = "stepped {0}, fixed {1}")
    @CsvSource({"false,", "true,", "false,8.2", "true,8.13"})
    void areCountedAsTheyAre(boolean hasStepped, Double fixed) {
        Project project = project(hasStepped, fixed == null ? OptionalDouble.empty() : OptionalDouble.of(fixed));
        CompiledProject compiled = new CompiledProject(project);
        List<Double> offered =
                project.boardTypes().get(0).timesSeconds().orElseThrow().all();
        Verdict verdict = null;
        for (long moves : new long[] {1, 300, 6_000}) {
            Plan plan = Plans.judged(
                    project,
                    new Planner(
                                    new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), moves, 1),
                                    progress -> {})
                            .plan()
                            .plan());
            Layout layout = Layout.of(project, plan);
            verdict = Referee.judge(layout, Optional.empty());
            PlanSums sums = new PlanMapper(compiled).toSums(plan);

            assertThat(sums.hardCharge() == 0)
                    .as("hard charge %d, violations %s", sums.hardCharge(), verdict.violations())
                    .isEqualTo(verdict.violations().isEmpty());
            assertThat(sums.objectiveMilliAmps() / 1000.0)
                    .isCloseTo(verdict.metrics().objective(), within(0.002));
            for (Placement each : layout.placements()) {
                String board = each.board().orElseThrow().id();
                if (!(hasStepped && board.equals("B1"))) {
                    double set = each.onSeconds().orElseThrow() - layout.times().beginSeconds(board);
                    assertThat(offered).anyMatch(time -> Math.abs(time - set) < 1e-9);
                }
            }
        }
        assertThat(verdict.violations()).isEmpty();
    }

    /** Times that share no interval: 20 of them on each of eight boards have millions of sums. */
    @Test
    void areLeftOutWhereTheyShareNoInterval() {
        List<Double> odd = IntStream.range(0, 20)
                .mapToObj(i -> 0.5 * i + i * i * i * 1.3e-5)
                .toList();
        Project ranged = project(false, OptionalDouble.empty());
        Project project = ranged.withBoardTypes(List.of(
                ranged.boardTypes()
                        .get(0)
                        .withTimesSeconds(
                                Optional.of(OfferedTimes.builder().listed(odd).build())),
                ranged.boardTypes().get(1)));

        CompiledProject compiled = new CompiledProject(project);

        assertThat(compiled.times[0]).hasSizeBetween(3, 19);
        assertThat(odd)
                .containsAll(java.util.Arrays.stream(compiled.times[0])
                        .map(each -> each.seconds())
                        .toList());
        // The sum of two offered times is an instant of its own, not one that is near.
        long micros = compiled.times[0][1].micros() + compiled.times[0][2].micros();
        assertThat(compiled.instants.micros(compiled.instants.indexOf(micros))).isEqualTo(micros);
    }
}
