package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Metrics;
import evenrise.model.project.ObjectiveWeights;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** Each part counts by its own weight, whatever the others are. */
class ObjectiveTest {
    private static final Metrics METRICS = metrics();

    private static Metrics metrics() {
        return Metrics.builder()
                .movedBreakers(3)
                .movedLeads(2)
                .movedSettings(1)
                .rackPanels(4)
                .rackBoards(5)
                .rackRows(6)
                .build();
    }

    private static double further(
            UnaryOperator<evenrise.model.project.ObjectiveWeightsBuilder> weighted, Metrics metrics) {
        return Objective.further(
                weighted.apply(ObjectiveWeights.builder()
                                .nodeImbalance(0)
                                .rackPanels(0)
                                .rackBoards(0)
                                .rackRows(0)
                                .move(0))
                        .build(),
                7,
                metrics);
    }

    /** Three breakers, two leads and one setting at a half each. */
    @Test
    void everyMoveCosts() {
        assertThat(further(weights -> weights.move(0.5), METRICS)).isCloseTo(3, within(1e-12));
    }

    @Test
    void racksCostByPanelsBoardsAndRows() {
        assertThat(further(weights -> weights.rackPanels(2), METRICS)).isEqualTo(8);
        assertThat(further(weights -> weights.rackBoards(2), METRICS)).isEqualTo(10);
        assertThat(further(weights -> weights.rackRows(2), METRICS)).isEqualTo(12);
        assertThat(further(weights -> weights.nodeImbalance(2), METRICS)).isEqualTo(14);
    }

    /** 100 A at 1, 10 A at 2, 20 A at 3, 30 s at 0.1, four boards at 5: 100 + 20 + 60 + 3 + 20. */
    @Test
    void isTheWeightedSum() {
        ObjectiveWeights weights = ObjectiveWeights.builder()
                .peakInrush(1)
                .supplyImbalance(2)
                .panelImbalance(3)
                .duration(0.1)
                .boards(5)
                .build();

        assertThat(Objective.of(weights, 100, 10, 20, 30, 4)).isCloseTo(203, within(1e-9));
    }
}
