package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Bounds;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class LowerBoundsTest {
    /** A planted plan keeps every rule, so a bound above one of its figures would be no bound. */
    @Property(tries = 1000, seed = "20261125")
    @Label("are never above a figure of a plan that keeps every rule")
    void areNeverAboveAFigureOfAPlanThatKeepsEveryRule(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);

        Bounds bounds = LowerBounds.of(planted.project());
        Verdict verdict = Referee.judge(planted.project(), planted.plan());

        double panels = verdict.nodes().stream()
                .skip(1)
                .mapToDouble(NodeFigures::deviationAmps)
                .sum();
        assertThat(bounds.peakInrushAmps())
                .isLessThanOrEqualTo(verdict.metrics().peakInrushAmps() + 1e-9);
        assertThat(bounds.supplyDeviationAmps())
                .isLessThanOrEqualTo(verdict.nodes().get(0).deviationAmps());
        assertThat(bounds.panelDeviationsAmps()).isLessThanOrEqualTo(panels);
        assertThat(bounds.durationSeconds())
                .isLessThanOrEqualTo(verdict.metrics().durationSeconds() + 1e-9);
        assertThat(bounds.objective()).isLessThanOrEqualTo(verdict.metrics().objective() + 1e-9);
    }
}
