package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.exact.ExactBounds;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No bound is above a figure of a plan that keeps every rule, whatever parts a plant has. */
class PlantBoundsTest {
    private static final double ROUNDING = 1e-6;
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 40);

    @ParameterizedTest(name = "seeds from {0}")
    @ValueSource(longs = {1, 11, 21, 31})
    void holdsOfPlansThatTheSearchFinds(long first) {
        long kept = LongStream.range(first, first + 10)
                .filter(seed -> holds(seed, 3_000))
                .count();

        assertThat(kept).as("plants with a plan that keeps every rule").isPositive();
    }

    @Tag("slow")
    @Test
    void holdsOfHundredsOfPlans() {
        long kept = LongStream.range(1_000, 1_000 + PLANTS)
                .filter(seed -> holds(seed, 10_000))
                .count();

        assertThat(kept).isGreaterThanOrEqualTo(PLANTS / 4);
    }

    /** Whether there is a plan to hold the bounds against; fails where a bound is above its figures. */
    private static boolean holds(long seed, long moves) {
        Project project = Plantful.of(seed, Plantful.some(seed, 5 + (int) (seed % 4) * 5));
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), seed, 1);
        Plan plan = PlanFinisher.timed(
                project, new Planner(request, progress -> {}).plan().plan());
        Verdict verdict = Referee.judge(project, plan);
        Bounds known = ProvenBounds.of(project);
        Metrics metrics = verdict.metrics();
        if (!verdict.violations().isEmpty()) {
            return false;
        }
        assertThat(known.objective()).as("short, seed %d", seed).isLessThanOrEqualTo(metrics.objective() + ROUNDING);
        assertThat(known.peakInrushAmps())
                .as("peak, seed %d", seed)
                .isLessThanOrEqualTo(metrics.peakInrushAmps() + ROUNDING);
        assertThat(known.durationSeconds())
                .as("duration, seed %d", seed)
                .isLessThanOrEqualTo(metrics.durationSeconds() + ROUNDING);
        if (!PlantPart.of(project).isEmpty()) {
            assertThat(sharper(request, known))
                    .as("sharper, seed %d", seed)
                    .isLessThanOrEqualTo(metrics.objective() + ROUNDING);
        }
        return true;
    }

    private static double sharper(PlanningRequest request, Bounds known) {
        double[] best = {known.objective()};
        new ExactBounds().on(request, note -> {}).sharpen(known, bounds -> best[0] = bounds.objective(), NOBODY);
        return best[0];
    }

    private static final BoundSource.Incumbent NOBODY = new BoundSource.Incumbent() {
        @Override
        public void bound(double objectiveAmps) {
            // what the search would do with it is another test's matter
        }

        @Override
        public void plan(Plan plan) {
            // it has one of its own
        }

        @Override
        public Optional<Plan> best() {
            return Optional.empty();
        }
    };
}
