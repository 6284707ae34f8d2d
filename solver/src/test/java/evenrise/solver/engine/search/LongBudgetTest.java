package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.project.PhaseSystem;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.lang.reflect.Proxy;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.optaplanner.core.api.score.director.ScoreDirector;

/** Half of a long budget goes on gently from the best plan that an annealing has ended in. */
class LongBudgetTest {
    private static final int LOADS = 60;
    private static final int LONG = 50 * LOADS * LOADS;

    private final CompiledProject plain = new CompiledProject(
            Sample.venue(1, new VenueSize(3, LOADS, PhaseSystem.THREE_PHASE)).project());

    /** After a first annealing that took a part of a budget of so many moves. */
    private static Cycle afterTheFirst(CompiledProject compiled, double part, int moves) {
        Cycle cycle = new Cycle(compiled, false);
        cycle.work((int) Math.round(part * moves));
        assertThat(cycle.budgetUsed(part)).isTrue();
        return cycle;
    }

    /** After a first annealing that took 15 % of a budget of so many moves. */
    private static Cycle afterTheFirst(CompiledProject compiled, int moves) {
        return afterTheFirst(compiled, 0.15, moves);
    }

    @Nested
    class Half {
        @Test
        void goesOnGentlyAgainAndAgain() {
            Cycle cycle = afterTheFirst(plain, LONG);

            assertThat(cycle.budgetUsed(0.499)).isFalse();
            assertThat(cycle.isGentle()).isFalse();
            for (double used : new double[] {0.5, 0.625, 0.75, 0.875}) {
                assertThat(cycle.budgetUsed(used)).isTrue();
                assertThat(cycle.isGentle()).isTrue();
                assertThat(cycle.stage()).isEqualTo(0.8);
            }
            assertThat(cycle.budgetUsed(0.9999)).isFalse();
        }

        @Test
        void annealsAsHotAsAlwaysWhereTheBudgetIsShorter() {
            Cycle cycle = afterTheFirst(plain, LONG - 10);

            assertThat(cycle.budgetUsed(0.9)).isFalse();
            assertThat(cycle.isGentle()).isFalse();
        }

        @Test
        void annealsAsHotAsAlwaysInSmallProjects() {
            Cycle cycle = afterTheFirst(new CompiledProject(ARandomProject.of(3)), LONG);

            assertThat(cycle.budgetUsed(0.9)).isFalse();
            assertThat(cycle.isGentle()).isFalse();
        }
    }

    /** Where more is no longer gained by going on gently: from some 190·n² moves. */
    @Nested
    class SeveralTries {
        private static final int THREE_TRIES = 3 * 75 * LOADS * LOADS * 5 / 4 + 1;
        private static final double TRY = 0.8 / 3;

        @Test
        void areEachHotAndThenGentle() {
            Cycle cycle = afterTheFirst(plain, TRY / 4, THREE_TRIES);

            for (int i = 0; i < 3; i++) {
                double begin = i * TRY;
                if (i > 0) {
                    assertThat(cycle.budgetUsed(begin)).isTrue();
                    assertThat(cycle.isAnew()).isTrue();
                    assertThat(cycle.isGentle()).isFalse();
                    assertThat(cycle.budgetUsed(begin + 0.15 * TRY + 1e-6)).isTrue();
                }
                assertThat(cycle.isAnew()).isFalse();
                assertThat(cycle.isGentle()).isFalse();
                for (double part : new double[] {0.5, 0.625, 0.75, 0.875}) {
                    assertThat(cycle.budgetUsed(begin + part * (TRY + 1e-6))).isTrue();
                    assertThat(cycle.isGentle()).isTrue();
                    assertThat(cycle.isAnew()).isFalse();
                    assertThat(cycle.isLast()).isFalse();
                }
            }
        }

        @Test
        void endWithTheLastFifthGoneOnGently() {
            Cycle cycle = afterTheFirst(plain, TRY / 4, THREE_TRIES);
            cycle.budgetUsed(0.799);

            assertThat(cycle.budgetUsed(0.8)).isTrue();
            assertThat(cycle.isLast()).isTrue();
            assertThat(cycle.isGentle()).isTrue();
            assertThat(cycle.budgetUsed(0.8 + 0.125 * TRY + 1e-6)).isTrue();
            assertThat(cycle.isLast()).isTrue();
            assertThat(cycle.isGentle()).isTrue();
        }

        @Test
        void areNotMadeOfAShorterBudget() {
            Cycle cycle = afterTheFirst(plain, 0.15, 2 * 75 * LOADS * LOADS * 5 / 4 - 100);

            cycle.budgetUsed(0.51);

            assertThat(cycle.isGentle()).isTrue();
            assertThat(cycle.budgetUsed(0.875)).isTrue();
            assertThat(cycle.isAnew()).isFalse();
            assertThat(cycle.isLast()).isFalse();
        }
    }

    @Test
    void aShortHotAnnealingIsNotBegunBeforeTheGentleOnes() {
        Cycle cycle = afterTheFirst(plain, LONG);

        cycle.work(2 * 60 * LOADS * LOADS);
        assertThat(cycle.budgetUsed(0.4)).isTrue();

        assertThat(cycle.isGentle()).isTrue();
    }

    @Test
    void gentleIsATwentiethOfTheHeatInPlainProjects() {
        Cooling cooling = new Cooling(plain);

        assertThat(cooling.gentle(0) / cooling.temperature(0)).isCloseTo(0.05, within(1e-12));
        assertThat(cooling.gentle(1) / cooling.temperature(1)).isCloseTo(1, within(1e-9));
    }

    @Test
    void theWayBackLeadsToThePlanThatWasMet() {
        PlanSnapshot met = FirstPlan.build(plain).snapshot();
        WorkingPlan plan = WorkingPlan.of(plain, met);
        plan.loads().get(0).setPlace(null);
        plan.loads().get(1).setOutput(null);
        plan.boards().get(2).setStep(null);

        Rearrangement back = Rearrangement.to(met, plan);
        back.doMoveOnGenuineVariables(listening());

        assertThat(back.isJudged()).isTrue();
        assertThat(plan.snapshot()).usingRecursiveComparison().isEqualTo(met);
    }

    /** Nobody asks it for anything but to listen. */
    @SuppressWarnings("unchecked")
    private static ScoreDirector<WorkingPlan> listening() {
        return (ScoreDirector<WorkingPlan>) Proxy.newProxyInstance(
                LongBudgetTest.class.getClassLoader(),
                new Class<?>[] {ScoreDirector.class},
                (proxy, method, arguments) -> null);
    }
}
