package evenrise.model.rules;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Plan;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Distribution.Point;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * A supply of 480Y/277 V feeds P0 and a delta-wye transformer T to 208Y/120 V, which feeds P1. On P1, L1 draws 100 A on A, of
 * which with r = 0.75 80 A are fundamental and 60 A third harmonic; on P0, L0 draws 20 A on A at power factor 0.5.
 */
class UseCurrentsTest {
    private static final Offset<Double> NEARLY = within(0.001);
    private static final double PRIMARY_VOLTS = 480 / Math.sqrt(3);

    private final Layout layout = layout();
    private final UseCurrents full = layout.fullUse();
    private final Point supply = layout.distribution().points().get(0);
    private final Point transformer = layout.distribution().point("T").orElseThrow();
    private final Point panel = layout.distribution().point("P1").orElseThrow();

    private static Layout layout() {
        DistributionNode node = DistributionNode.builder()
                .id("T")
                .ratedAmps(400)
                .transformer(Transformer.builder()
                        .connection(TransformerConnection.DELTA_WYE)
                        .secondary(Secondary.builder()
                                .system(PhaseSystem.THREE_PHASE)
                                .lineToNeutralVolts(120)
                                .build())
                        .build())
                .build();
        Project project = aProject()
                .supply(aSupply().with(made -> made.lineToNeutralVolts(PRIMARY_VOLTS)))
                .panels(aPanel("P0"), aPanel("P1").with(made -> made.fedFrom("T")))
                .loads(
                        aLoad("L0").unswitched().runningAmps(20).powerFactor(0.5),
                        aLoad("L1").unswitched().runningAmps(100).thirdHarmonic(0.75))
                .with(made -> made.nodes(List.of(node)))
                .build();
        Plan plan = aPlan().assignments(
                        anAssignment("L0").at("P0", 1), anAssignment("L1").at("P1", 1))
                .build();
        return Layout.of(project, plan);
    }

    private static void lines(Map<Phase, Double> amps, double a, double b, double c) {
        assertThat(amps.get(Phase.A)).isCloseTo(a, NEARLY);
        assertThat(amps.get(Phase.B)).isCloseTo(b, NEARLY);
        assertThat(amps.get(Phase.C)).isCloseTo(c, NEARLY);
    }

    /** A quarter of 100 A from A and B, by 480 to 120 turns; beside it 20 A of L0. */
    @Test
    void addUpByMagnitudes() {
        lines(full.running(transformer).byPhase(), 100, 0, 0);
        lines(full.running(supply).byPhase(), 45, 25, 0);
    }

    @Test
    void beforeATransformerAreThoseOfItsPrimary() {
        lines(full.feederAmps(transformer), 25, 25, 0);
        lines(full.feederAmps(panel), 100, 0, 0);
    }

    /**
     * The current of one leg alone stands 30° ahead in line A, L0's 60° behind: two currents of 20 A at a right angle, with 15 A
     * of third harmonic √(20² + 20² + 15²) = 32.016 A. On B 20 and 15 A: 25 A.
     */
    @Test
    void addUpAsAMeterShows() {
        lines(full.metered(supply), 32.0156, 25, 0);
        lines(full.metered(panel), 100, 0, 0);
    }

    /** One line alone is a third of each sequence: 80/3 A. */
    @Test
    void haveComponents() {
        assertThat(full.components(panel).positive().length()).isCloseTo(80 / 3.0, NEARLY);
        assertThat(full.components(panel).zero().length()).isCloseTo(80 / 3.0, NEARLY);
        // What leaves a delta has no zero sequence, so that L0's 20/3 A are all of it.
        assertThat(full.components(supply).zero().length()).isCloseTo(20 / 3.0, NEARLY);
    }

    @Test
    void returnByTheNeutralOfTheirOwnSide() {
        assertThat(full.neutralAmps(panel)).isCloseTo(100, NEARLY);
        assertThat(full.neutralThirdAmps(panel)).isCloseTo(60, NEARLY);
        assertThat(full.neutralAmps(supply)).isCloseTo(20, NEARLY);
        assertThat(full.neutralThirdAmps(supply)).isZero();
    }

    @Test
    void knowWhatFeedsWhat() {
        Distribution tree = layout.distribution();

        assertThat(tree.point("none")).isEqualTo(Optional.empty());
        assertThat(tree.feedsTransformers(supply.index())).isTrue();
        assertThat(tree.feedsTransformers(panel.index())).isFalse();
        assertThat(tree.onward(panel.index())).containsExactly(panel.index(), transformer.index());
        assertThat(tree.onward(supply.index())).containsExactly(supply.index());
        assertThat(panel.lineToNeutralVolts()).isEqualTo(120);
        assertThat(supply.lineToNeutralVolts()).isEqualTo(PRIMARY_VOLTS);
        assertThat(layout.worstNeutralAmps().get(panel.index())).isCloseTo(100, NEARLY);
    }
}
