package evenrise.model.scatter;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Cable;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.project.Secondary;
import evenrise.model.project.SourceKind;
import evenrise.model.project.Spread;
import evenrise.model.project.SupplySource;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.review.Networks;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Dips of trials through nodes and transformers, with nothing left to chance. */
class TreeDipsTest {
    private static final Scatter NONE = Scatter.builder()
            .closing(Spread.UNIFORM)
            .leastInrushPercent(100)
            .angleUpToHalfMillis(0)
            .meanVoltagePercent(100)
            .voltageDeviationPercent(0)
            .build();

    /** 100 A crest that hardly fall in a half-cycle: 70.7 A rms. */
    private static Project plant(double volts, double faultAmps) {
        return aProject()
                .supply(aSupply().lineToNeutralVolts(volts))
                .electrical(Electrical.builder()
                        .practice(Practice.NEC)
                        .source(SupplySource.builder()
                                .kind(SourceKind.UTILITY)
                                .faultAmps(faultAmps)
                                .build())
                        .build())
                .boards(aBoard("B1"))
                .loads(aLoad("L1")
                        .runningAmps(0)
                        .idleAmps(0)
                        .inrushPeakAmps(100)
                        .inrushHalfMillis(2000))
                .build();
    }

    private static Project behind(DistributionNode node, Project project) {
        return project.withNodes(List.of(node))
                .withPanels(List.of(project.panels().get(0).withFedFrom(Optional.of(node.id()))));
    }

    private static DistributionNode node() {
        return DistributionNode.builder().id("N").ratedAmps(400).build();
    }

    private static List<NodeScatter> nodes(Project project) {
        Layout layout = Layout.of(
                project,
                aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1)).build());
        return Trials.of(layout, NONE, Networks.of(layout), Networks.ofTree(layout), 10, 1, 1);
    }

    private static double deepest(List<NodeScatter> nodes, String name) {
        return nodes.stream()
                .filter(each -> each.node().equals(name))
                .findFirst()
                .orElseThrow()
                .deepestPercent();
    }

    /** 0.2 Ω of 120 V: a linear 11.785 %, at most 11.704 %. */
    @Test
    void areFeltByAllThatFeedsWhatCloses() {
        List<NodeScatter> nodes = nodes(behind(node(), plant(120, 600)));

        assertThat(nodes).allSatisfy(it -> assertThat(it.dipPercent()).hasSize(3));
        assertThat(deepest(nodes, "supply")).isCloseTo(11.70, within(0.01));
        assertThat(deepest(nodes, "N")).isCloseTo(11.70, within(0.01));
        assertThat(deepest(nodes, "P1")).isCloseTo(11.70, within(0.01));
    }

    /** A feeder of line and neutral counts the same in a star and behind a node that has none; the source has next to none. */
    @Test
    void areThoseOfAStarBehindANodeWithoutImpedance() {
        Cable cable = Cable.builder().size("4 AWG").lengthMetres(40).build();
        Project star = plant(120, 600_000);
        star = star.withPanels(List.of(star.panels()
                .get(0)
                .withFeeder(
                        Optional.of(Feeder.builder().cable(Optional.of(cable)).build()))));

        double asStar = deepest(nodes(star), "P1");

        assertThat(asStar).isGreaterThan(deepest(nodes(star), "supply") + 1);
        assertThat(deepest(nodes(behind(node(), star)), "P1")).isCloseTo(asStar, within(0.015));
    }

    /**
     * Behind 480 V to 208Y/120 V, one phase draws k/√3 = 0.2502 of its 70.7 A from two lines: 0.1 Ω in each drop 3.538 V
     * between them, 0.737 % of 480 V, and of 120 V the same.
     */
    @Test
    void passTransformersAsTheyTurnCurrents() {
        DistributionNode transformer = node().withTransformer(Optional.of(Transformer.builder()
                .connection(TransformerConnection.DELTA_WYE)
                .secondary(Secondary.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(208 / Math.sqrt(3))
                        .build())
                .build()));
        List<NodeScatter> nodes = nodes(behind(transformer, plant(480 / Math.sqrt(3), 4800 / Math.sqrt(3))));

        assertThat(deepest(nodes, "supply")).isCloseTo(0.737, within(0.004));
        assertThat(deepest(nodes, "P1")).isCloseTo(0.737, within(0.004));
    }

    @Test
    void areLeftOutWhereNoSourceIsStated() {
        Project project = behind(node(), plant(120, 600)).withElectrical(Optional.empty());

        assertThat(nodes(project)).allSatisfy(it -> assertThat(it.dipPercent()).isEmpty());
    }
}
