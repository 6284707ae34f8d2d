package evenrise.solver.bounds;

import static evenrise.model.Fixtures.NOBODY;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Metrics;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import org.junit.jupiter.api.Test;

/** A planted plan keeps every rule, so a bound above one of its figures would be no bound. */
class PlantedPlanTest {
    private static final int PROJECTS = 2_000;
    private static final double ROUNDING = 1e-9;

    @Test
    void noBoundIsAboveAFigureOfAPlanThatKeepsEveryRule() {
        for (long seed = 0; seed < PROJECTS; seed++) {
            hold(seed, ARandomProject.planted(seed));
        }
    }

    /** Times that are no multiples of a microsecond: instants stand for whole intervals. */
    @Test
    void norWhereTimesHaveNoCommonDivisor() {
        for (long seed = 0; seed < PROJECTS / 4; seed++) {
            ARandomProject.Planted stretched = Stretched.by(Math.PI / 3, ARandomProject.planted(seed));
            boolean coarse =
                    stretched.project().boards().isEmpty() || !new BoundedProject(stretched.project()).grid.exact();

            assertThat(coarse).isTrue();
            hold(seed, stretched);
        }
    }

    private static void hold(long seed, ARandomProject.Planted planted) {
        Bounds bounds = ProvenBounds.of(planted.project());
        Verdict verdict = Referee.judge(
                planted.project(), PlanFinisher.finish(planted.project(), planted.plan(), NOBODY, bounds));

        Metrics metrics = verdict.metrics();
        double panels = verdict.nodes().stream()
                .skip(1)
                .mapToDouble(NodeFigures::deviationAmps)
                .sum();
        assertThat(verdict.violations()).as("seed %d", seed).isEmpty();
        assertThat(bounds.peakInrushAmps())
                .as("peak, seed %d", seed)
                .isLessThanOrEqualTo(metrics.peakInrushAmps() + ROUNDING);
        assertThat(bounds.supplyDeviationAmps())
                .as("supply deviation, seed %d", seed)
                .isLessThanOrEqualTo(verdict.nodes().get(0).deviationAmps() + ROUNDING);
        assertThat(bounds.panelDeviationsAmps())
                .as("panel deviations, seed %d", seed)
                .isLessThanOrEqualTo(panels + ROUNDING);
        assertThat(bounds.durationSeconds())
                .as("duration, seed %d", seed)
                .isLessThanOrEqualTo(metrics.durationSeconds() + ROUNDING);
        assertThat(FewestBoards.of(planted.project()))
                .as("boards, seed %d", seed)
                .isLessThanOrEqualTo(metrics.boardsUsed());
        assertThat(bounds.objective())
                .as("objective, seed %d", seed)
                .isLessThanOrEqualTo(metrics.objective() + ROUNDING);
    }
}
