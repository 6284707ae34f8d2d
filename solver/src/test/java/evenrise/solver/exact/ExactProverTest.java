package evenrise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Instances;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.sample.Sample;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ExactProverTest {
    /** Far more than is needed: a proof ends the search, or the test does not end well. */
    private static final Budget LONG = new Budget.Time(Duration.ofMinutes(10));

    private static final double ROUNDING = 1e-6;

    private static PlanningOutcome plan(Project project, Budget budget) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), budget, 1, 1);
        return new Planner(request, progress -> {}, new ExactProver(2, note -> {})).plan();
    }

    private static Verdict verdict(Project project, PlanningOutcome outcome) {
        return Referee.judge(project, PlanFinisher.timed(project, outcome.plan()));
    }

    private static void isOptimal(Project project, PlanningOutcome outcome) {
        Verdict verdict = verdict(project, outcome);

        assertThat(verdict.violations()).isEmpty();
        assertThat(verdict.metrics().objective() - outcome.provenObjective())
                .as("objective over what is proven, in ampere-equivalents")
                .isBetween(-ROUNDING, Proof.PROVEN_AMPS);
    }

    @Nested
    class WithATime {
        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {6})
        void endsTheSearchAtTheProvenOptimumOfProjectsWithEveryKindOfRule(long seed) {
            Project project = ExactModelProject.of(seed);

            PlanningOutcome outcome = plan(project, LONG);

            isOptimal(project, outcome);
        }

        /** Mitchell 1957 in the collection of Scholl 1993; optimum published by Blum 2011, SORT 35(2):145–164. */
        @ParameterizedTest(name = "{0} stations: {1}")
        @CsvSource({"3, 35", "6, 18", "8, 14"})
        void provesThePublishedOptimumOfAnAssemblyLine(int stations, int optimum) {
            int[] times = {4, 3, 9, 5, 9, 4, 8, 7, 5, 1, 3, 1, 5, 3, 5, 3, 13, 5, 2, 3, 7};
            int[][] precedence = {
                {1, 2}, {1, 3}, {2, 21}, {3, 4}, {4, 5}, {4, 21}, {5, 6}, {5, 7}, {6, 8}, {7, 8}, {7, 14}, {8, 9},
                {9, 10}, {9, 11}, {9, 12}, {9, 13}, {10, 15}, {11, 15}, {12, 15}, {13, 17}, {13, 18}, {14, 19},
                {15, 16}, {15, 18}, {16, 17}, {17, 20}, {18, 19}
            };
            Project project = Instances.assemblyLine("Mitchell", times, precedence, stations);

            PlanningOutcome outcome = plan(project, LONG);

            isOptimal(project, outcome);
            assertThat(Math.round(outcome.provenObjective())).isEqualTo(optimum);
        }
    }

    @Nested
    class WithMoves {
        private static final Budget MOVES = new Budget.Moves(60_000);

        @Test
        void givesTheSamePlanAndBoundEachTime() {
            Project project = ExactModelProject.of(6);

            PlanningOutcome once = plan(project, MOVES);
            PlanningOutcome again = plan(project, MOVES);

            assertThat(again.plan()).isEqualTo(once.plan());
            assertThat(again.provenObjective()).isEqualTo(once.provenObjective());
            assertThat(once.provenObjective()).isPositive();
        }

        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {6, 8})
        void neverProvesMoreThanTheExactOptimum(long seed) {
            Project project = ExactModelProject.of(seed);

            PlanningOutcome outcome = plan(project, MOVES);

            assertThat(outcome.provenObjective())
                    .isPositive()
                    .isLessThanOrEqualTo(ExactOptimumTest.optimum(seed)
                                    .plan()
                                    .metrics()
                                    .orElseThrow()
                                    .objective()
                            + ROUNDING);
        }
    }

    @Nested
    class OnTinyProjects {
        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {2, 3})
        void agreesWithTheRefereesVerdictOnEveryPlan(long seed) {
            Project project = TinyProject.of(seed);
            double least = EveryPlan.leastObjective(project);

            PlanningOutcome outcome = plan(project, new Budget.Moves(50_000));

            assertThat(least).isFinite();
            assertThat(verdict(project, outcome).metrics().objective()).isBetween(least - ROUNDING, least + 0.001);
            assertThat(outcome.provenObjective()).isBetween(least - 0.001, least + ROUNDING);
        }
    }

    @Nested
    class OnOtherProjects {
        @Test
        void leavesLargeOnesAlone() {
            Project project = Sample.venue(1, 3);

            assertThat(ExactProver.isSmall(project)).isFalse();
            assertThat(plan(project, new Budget.Moves(10)).provenObjective()).isZero();
        }

        @Test
        void saysOnceWhereFiguresDoNotFitItsWholeNumbers() {
            Project project = TinyProject.of(1, 1.0 / 3);
            List<String> notes = new ArrayList<>();

            PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(100), 1, 1);
            PlanningOutcome outcome = new Planner(request, progress -> {}, new ExactProver(1, notes::add)).plan();

            assertThat(outcome.provenObjective()).isZero();
            assertThat(notes).hasSize(1);
            assertThat(notes.get(0)).contains("nothing is proven");
        }
    }
}
