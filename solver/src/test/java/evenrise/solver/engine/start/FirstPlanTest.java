package evenrise.solver.engine.start;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.engine.search.Plans;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What the first plan must not do, however little room there is; the search never mends what it never breaks. */
class FirstPlanTest {
    private static Plan plan(Project project, long moves) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), 1, 1);
        return Plans.finished(
                project, new Planner(request, progress -> {}).plan().plan());
    }

    @Test
    void looksForABoardThatHasTheFixedOutput() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .boardTypes(aBoardType("two").outputs(2), aBoardType("six").outputs(6))
                .boards(aBoard("small").type("two"), aBoard("long").type("six"))
                .loads(aLoad("early").fixedBoard("small"), aLoad("late").fixedOutput(5))
                .build();

        Plan plan = plan(project, 1);

        assertThat(Referee.judge(project, plan).violations()).isEmpty();
    }

    @Test
    void givesOneOutputToOneOfTwoLoadsThatAreFixedToItsNumber() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .boardTypes(aBoardType("four").outputs(4))
                .boards(aBoard("B1").type("four"), aBoard("B2").type("four"))
                .loads(aLoad("one").fixedOutput(3), aLoad("other").fixedOutput(3), aLoad("free"))
                .build();

        Plan first = plan(project, 1);
        Plan found = plan(project, 2_000);

        assertThat(Referee.judge(project, first).violations())
                .extracting(violation -> violation.rule())
                .doesNotContain("fixed");
        assertThat(Referee.judge(project, found).violations()).isEmpty();
    }

    /** Nothing is switched: no boards, no outputs, no instants but the first. */
    @Test
    void plansAProjectWithoutABoard() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .loads(aLoad("clock").unswitched(), aLoad("exit").unswitched())
                .build();

        Plan plan = plan(project, 500);

        assertThat(Referee.judge(project, plan).violations()).isEmpty();
    }

    @Nested
    class WhenBoardsStartOneAnother {
        /** The board behind comes first in the project, so that processing, which is chosen first, opens it. */
        @Test
        void putsNoLaterRoleOnTheBoardBeforeProcessing() {
            PlanSums first = FirstPlan.build(new CompiledProject(aProject()
                    .panels(aPanel("P1"))
                    .boardTypes(aBoardType("two").outputs(2).startDelaySeconds(0, 10))
                    .boards(
                            aBoard("behind").type("two").after("before"),
                            aBoard("before").type("two"),
                            aBoard("apart").type("two"))
                    .loads(aLoad("dsp").processing(), aLoad("rack").processing())
                    .loads(aLoad("left").amplifier(), aLoad("right").amplifier())
                    .build()));

            assertThat(boardsOf(first)).containsExactly(0, 0, 2, 2);
            assertThat(first.hardCharge()).isZero();
        }

        @Test
        void putsNoLaterRoleBeforeAnEarlierOneFurtherDownTheChain() {
            PlanSums first = FirstPlan.build(new CompiledProject(aProject()
                    .panels(aPanel("P1"))
                    .boardTypes(aBoardType("one").outputs(1).startDelaySeconds(0, 10))
                    .boards(
                            aBoard("third").type("one").after("second"),
                            aBoard("second").type("one").after("first"),
                            aBoard("first").type("one"),
                            aBoard("apart").type("one"))
                    .loads(aLoad("dsp").processing(), aLoad("left").amplifier())
                    .build()));

            assertThat(boardsOf(first)).containsExactly(0, 3);
            assertThat(first.hardCharge()).isZero();
        }

        @Test
        void putsNoEarlierRoleBehindABoardThatHoldsALaterOne() {
            PlanSums first = FirstPlan.build(new CompiledProject(aProject()
                    .panels(aPanel("P1"))
                    .boards(aBoard("behind").after("before"), aBoard("before"), aBoard("apart"))
                    .loads(
                            aLoad("amp").amplifier().fixedBoard("before"),
                            aLoad("dsp").processing())
                    .build()));

            assertThat(boardsOf(first)).containsExactly(1, 2);
        }

        private int[] boardsOf(PlanSums sums) {
            return IntStream.range(0, sums.compiled.loadCount())
                    .map(load -> sums.outputOf(load).board())
                    .toArray();
        }
    }

    @Nested
    class WhenABoardMixesRoles {
        @Test
        void leavesAllUnusedOutputsBetweenASingleLoadAndTheLastRole() {
            assertThat(outputsOf(
                            aLoad("dsp").processing().settleSeconds(3),
                            aLoad("amp").amplifier()))
                    .containsExactly(0, 4);
        }

        @Test
        void leavesAllUnusedOutputsBetweenSeveralLoadsAndTheLastRole() {
            assertThat(outputsOf(
                            aLoad("dsp").processing().settleSeconds(3),
                            aLoad("rack").processing().settleSeconds(3),
                            aLoad("amp").amplifier()))
                    .containsExactly(0, 1, 4);
        }

        @Test
        void leavesNoGapWhereAllLoadsHaveOneRole() {
            assertThat(outputsOf(aLoad("left").amplifier(), aLoad("right").amplifier()))
                    .containsExactly(0, 1);
        }

        private int[] outputsOf(LoadBuilder... loads) {
            PlanSums first = FirstPlan.build(new CompiledProject(aProject()
                    .panels(aPanel("P1"))
                    .boardTypes(aBoardType("five").outputs(5).stepSeconds(1))
                    .boards(aBoard("B1").type("five"))
                    .loads(loads)
                    .build()));
            assertThat(first.hardCharge()).isZero();
            return IntStream.range(0, loads.length)
                    .map(load -> first.outputOf(load).ordinal())
                    .toArray();
        }
    }
}
