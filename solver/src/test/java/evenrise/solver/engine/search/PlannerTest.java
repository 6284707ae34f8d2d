package evenrise.solver.engine.search;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlannerTest {
    private static final long MOVES = 3_000;

    private static Plan plan(Project project, Optional<Plan> from, long seed, int threads) {
        PlanningRequest request = new PlanningRequest(project, from, new Budget.Moves(MOVES), seed, threads);
        return new Planner(request, progress -> {}).plan().plan();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {3, 5, 8})
    void findsTheSamePlanForTheSameSeedAndMoves(long seed) {
        Project project = ARandomProject.of(seed);

        Plan once = plan(project, Optional.empty(), 7, 2);
        Plan again = plan(project, Optional.empty(), 7, 2);

        assertThat(again).isEqualTo(once);
    }

    /** The search starts at the plan it is given and keeps the best, so it can only get better. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14})
    void neverEndsWorseThanThePlanItStartsFrom(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        double before =
                Referee.judge(planted.project(), planted.plan()).metrics().objective();

        Plan found = Plans.finished(planted.project(), plan(planted.project(), Optional.of(planted.plan()), 1, 1));

        assertThat(found.violations()).isEmpty();
        assertThat(found.metrics().orElseThrow().objective()).isLessThanOrEqualTo(before + 0.001);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void leavesFixedPartsWhereTheyAre(long seed) {
        Project project = ARandomProject.of(seed);

        Plan plan = plan(project, Optional.empty(), 1, 1);

        for (Assignment assignment : plan.assignments()) {
            Load load = project.loads().stream()
                    .filter(each -> each.id().equals(assignment.load()))
                    .findFirst()
                    .orElseThrow();
            FixedPlace fixed = load.fixed();
            fixed.panel().ifPresent(panel -> assertThat(assignment.panel()).isEqualTo(panel));
            fixed.slot().ifPresent(slot -> assertThat(assignment.slot()).isEqualTo(slot));
            fixed.board().ifPresent(board -> assertThat(assignment.board()).contains(board));
            fixed.output()
                    .ifPresent(output ->
                            assertThat(assignment.output().orElseThrow()).isEqualTo(output));
        }
    }

    /** Of a and b each is fixed to another board; both boards seat groups anyhow, so c may join either. */
    @Test
    void spreadsAGroupThatNoBoardCouldHoldWhole() {
        Project project = aProject()
                .boardTypes(
                        aBoardType("whole"),
                        aBoardType("anyhow").outputs(2).with(type -> type.groups(GroupSeating.ANY)))
                .boards(
                        aBoard("B1").type("anyhow"),
                        aBoard("B2").type("anyhow"),
                        aBoard("B3").type("whole"))
                .groups(aGroup("g"))
                .loads(
                        aLoad("a").group("g").fixedBoard("B1"),
                        aLoad("b").group("g").fixedBoard("B2"),
                        aLoad("c").group("g"))
                .build();

        Plan found = Plans.judged(project, plan(project, Optional.empty(), 1, 1));

        assertThat(found.violations()).isEmpty();
    }

    @Test
    void oneSearchGivesWayWhereAProofBesideThemIsWorthAProcessor() {
        BoundSource worthIt = new Failing(new IllegalStateException()) {
            @Override
            public boolean takesAProcessor() {
                return true;
            }
        };

        assertThat(Planner.searchCount(request(new Budget.Time(Duration.ofSeconds(1)), 3), worthIt))
                .isEqualTo(2);
        assertThat(Planner.searchCount(request(new Budget.Time(Duration.ofSeconds(1)), 1), worthIt))
                .as("one is always there")
                .isEqualTo(1);
        assertThat(Planner.searchCount(request(new Budget.Moves(1), 3), worthIt))
                .as("with counted moves it proves afterwards")
                .isEqualTo(3);
        assertThat(Planner.searchCount(request(new Budget.Time(Duration.ofSeconds(1)), 3), BoundSource.NONE))
                .isEqualTo(3);
    }

    private static PlanningRequest request(Budget budget, int threads) {
        return new PlanningRequest(aProject().build(), Optional.empty(), budget, 1, threads);
    }

    /** A prover may run out of memory, miss a native symbol or have a bug. */
    private static class Failing implements BoundSource {
        private final Throwable trouble;
        private final List<Throwable> told = new ArrayList<>();

        Failing(Throwable trouble) {
            this.trouble = trouble;
        }

        @Override
        public void work(Project project, Budget budget, long seed, Incumbent incumbent) {
            incumbent.bound(1);
            if (trouble instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) trouble;
        }

        @Override
        public void stop() {}

        @Override
        public void failed(Throwable why) {
            told.add(why);
        }
    }

    static Stream<Arguments> troublesAndBudgets() {
        return Stream.of(new NullPointerException("bug"), new UnsatisfiedLinkError("symbol"), new OutOfMemoryError())
                .flatMap(trouble -> Stream.of(new Budget.Moves(500), new Budget.Time(Duration.ofMillis(200)))
                        .map(budget -> Arguments.of(trouble, budget)));
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("troublesAndBudgets")
    void aProofThatFailsCostsNoPlan(Throwable trouble, Budget budget) {
        Project project = ARandomProject.of(3);
        Failing prover = new Failing(trouble);
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), budget, 1, 1);

        PlanningOutcome outcome = new Planner(request, progress -> {}, prover).plan();

        assertThat(outcome.plan().boards()).hasSameSizeAs(project.boards());
        assertThat(outcome.provenObjective()).isEqualTo(1);
        assertThat(prover.told).containsExactly(trouble);
    }

    @Test
    void stoppedBeforeItBeginsItGivesTheFirstPlan() {
        Project project = ARandomProject.of(4);
        Budget forever = new Budget.Moves(Long.MAX_VALUE);
        Planner planner = new Planner(new PlanningRequest(project, Optional.empty(), forever, 1, 1), progress -> {});

        planner.stop();

        assertThat(planner.plan().plan().boards()).hasSameSizeAs(project.boards());
    }
}
