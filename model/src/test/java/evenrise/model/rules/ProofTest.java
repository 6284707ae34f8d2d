package evenrise.model.rules;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.PlanBuilder;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import org.junit.jupiter.api.Test;

/** One unswitched load of 10 A on phase A with the peak as the only cost: the objective is its base, √2·10 A. */
class ProofTest {
    private static final double OBJECTIVE = 10 * Math.sqrt(2);

    private final Project project = aProject()
            .objective(peakAlone(1))
            .loads(aLoad("L1").unswitched().runningAmps(10))
            .build();
    private final PlanBuilder plan = aPlan().assignments(anAssignment("L1").at("P1", 1));

    private static ObjectiveWeights peakAlone(double weight) {
        return ObjectiveWeights.builder()
                .peakInrush(weight)
                .supplyImbalance(0)
                .panelImbalance(0)
                .duration(0)
                .build();
    }

    private static Bounds bound(double objective) {
        return Judging.NOTHING_PROVEN.withObjective(objective);
    }

    private Plan finished(double bound) {
        return PlanFinisher.finish(project, plan.build(), Judging.MADE_BY, bound(bound));
    }

    /** (14.1421 − 7.0711) / 14.1421 = 50 %. */
    @Test
    void aBoundBelowLeavesAGapAndNoProof() {
        Plan half = finished(OBJECTIVE / 2);

        assertThat(half.gapPercent().orElseThrow()).isCloseTo(50, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(half.optimal()).isFalse();
    }

    /** A plan counts as the best there is up to a thousandth of an ampere-equivalent above its bound. */
    @Test
    void theToleranceIsAThousandth() {
        assertThat(finished(OBJECTIVE - 0.00099).optimal()).isTrue();
        assertThat(finished(OBJECTIVE - 0.00101).optimal()).isFalse();
        assertThat(finished(OBJECTIVE).optimal()).isTrue();
        assertThat(finished(OBJECTIVE).gapPercent()).hasValue(0);
    }

    /** A bound above the objective is reached, too; the gap says that something does not follow. */
    @Test
    void aBoundAboveGivesANegativeGap() {
        Plan above = finished(2 * OBJECTIVE);

        assertThat(above.optimal()).isTrue();
        assertThat(above.gapPercent().orElseThrow()).isCloseTo(-100, org.assertj.core.api.Assertions.within(1e-9));
    }

    /** Bounds hold for plans that keep every rule; one without its load lies below them and proves nothing. */
    @Test
    void aBrokenPlanHasNeitherGapNorProof() {
        Plan broken = PlanFinisher.finish(project, aPlan().build(), Judging.MADE_BY, bound(0));

        assertThat(broken.violations()).isNotEmpty();
        assertThat(broken.gapPercent()).isEmpty();
        assertThat(broken.optimal()).isFalse();
    }

    @Test
    void anObjectiveOfZeroHasNoGapAndIsTheLeast() {
        Project free = project.withObjective(peakAlone(0));

        Plan least = PlanFinisher.finish(free, plan.build(), Judging.MADE_BY, bound(0));

        assertThat(least.metrics().orElseThrow().objective()).isZero();
        assertThat(least.gapPercent()).hasValue(0);
        assertThat(least.optimal()).isTrue();
    }
}
