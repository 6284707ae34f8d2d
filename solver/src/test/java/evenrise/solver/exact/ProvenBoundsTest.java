package evenrise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Instances;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.engine.search.Plans;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Bounds against optima that others have proved, and against plans that keep every rule. */
class ProvenBoundsTest {
    private static final double ROUNDING = 1e-6;

    private static void hold(Bounds bounds, Project project, Plan plan) {
        Verdict verdict = Referee.judge(project, plan);
        double panels = verdict.nodes().stream()
                .skip(1)
                .mapToDouble(NodeFigures::deviationAmps)
                .sum();
        assertThat(bounds.objective()).isLessThanOrEqualTo(verdict.metrics().objective() + ROUNDING);
        assertThat(bounds.peakInrushAmps())
                .isLessThanOrEqualTo(verdict.metrics().peakInrushAmps() + ROUNDING);
        assertThat(bounds.supplyDeviationAmps())
                .isLessThanOrEqualTo(verdict.nodes().get(0).deviationAmps() + ROUNDING);
        assertThat(bounds.panelDeviationsAmps()).isLessThanOrEqualTo(panels + ROUNDING);
        assertThat(bounds.durationSeconds())
                .isLessThanOrEqualTo(verdict.metrics().durationSeconds() + ROUNDING);
    }

    @Nested
    class OfSmallProjects {
        @ParameterizedTest(name = "seed {0}")
        @MethodSource("evenrise.solver.exact.ExactOptimumTest#seeds")
        void areNeverAboveTheExactOptimum(long seed) {
            Project project = ExactModelProject.of(seed);

            Bounds bounds = ProvenBounds.of(project);

            Exact.Optimum exact = ExactOptimumTest.optimum(seed);
            assertThat(bounds.objective())
                    .isPositive()
                    .isLessThanOrEqualTo(exact.plan().metrics().orElseThrow().objective() + ROUNDING);
            hold(bounds, project, exact.plan());
        }

        @Test
        void areNeverAboveWhatShortSearchesFind() {
            int found = 0;
            for (long seed = 1; seed <= 150; seed++) {
                Project project = ExactModelProject.of(seed);
                PlanningRequest request =
                        new PlanningRequest(project, Optional.empty(), new Budget.Moves(4_000), seed, 1);
                Plan plan = Plans.finished(
                        project, new Planner(request, progress -> {}).plan().plan());
                if (plan.violations().isEmpty()) {
                    hold(plan.bounds().orElseThrow(), project, plan);
                    found++;
                }
            }
            assertThat(found).as("plans that keep every rule").isGreaterThan(20);
        }
    }

    @Nested
    class OfAssemblyLines {
        @ParameterizedTest(name = "{0} on {3} stations: {4}")
        @MethodSource("evenrise.solver.engine.search.PublishedOptimaTest$AssemblyLines#lines")
        void areTheLeastCycleTimeOrOneLess(String name, int[] times, int[][] precedence, int stations, int optimum) {
            Bounds bounds = ProvenBounds.of(Instances.assemblyLine(name, times, precedence, stations));

            boolean known = name.equals("Mansoor") && stations == 4;
            assertThat(bounds.peakInrushAmps()).isEqualTo(known ? optimum - 1 : optimum);
            assertThat(bounds.objective()).isEqualTo(bounds.peakInrushAmps());
        }
    }

    @Nested
    class OfThreeMachines {
        @ParameterizedTest(name = "{0}: {2}")
        @MethodSource("evenrise.solver.engine.search.PublishedOptimaTest$ThreeMachines#instances")
        void areNeverAboveTheLeastLargestSum(String name, int[] weights, int optimum) {
            Bounds bounds = ProvenBounds.of(Instances.threeMachines(name, weights));

            assertThat(bounds.peakInrushAmps()).isBetween(optimum * 0.89, optimum + ROUNDING);
        }
    }
}
