package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LineMatrix;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines and neutral of 0.05 + j0.05 Ω each at 120/208 V, and 200 A drawn from A. */
class RadialPlantTest {
    private static final Impedance WIRE = new Impedance(0.05, 0.05);
    private static final RadialPlant PLANT = new RadialPlant(
            PhaseSystem.THREE_PHASE,
            120,
            Impedance.ZERO,
            Map.of("P", RadialPlant.feeder(PhaseSystem.THREE_PHASE, WIRE, WIRE)));

    private static RadialPlant.Draw draw(double powerFactor, Phase... phases) {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);
        lines.add(List.of(phases), 200, Lag.behind(powerFactor));
        return RadialPlant.Draw.of(lines.lines());
    }

    /**
     * By hand at unity: A 120 − 200·2·(0.05 + j0.05) = 100 − j20, so 101.98 V; B 120∠−120° − (10 + j10) = −70 − j113.92, so
     * 133.71 V; C −70 + j93.92, so 117.14 V. The others in the same way.
     */
    @ParameterizedTest
    @CsvSource({"1, 101.98, 133.71, 117.14", "0.7, 91.72, 127.54, 127.77", "0.3, 95.82, 121.43, 132.15"})
    void aStepMovesEveryPhaseThroughTheNeutral(double powerFactor, double a, double b, double c) {
        RadialPlant.Voltages volts = PLANT.voltages(Map.of("P", draw(powerFactor, Phase.A)));

        assertThat(volts.at("P").a().length()).isCloseTo(a, within(0.005));
        assertThat(volts.at("P").b().length()).isCloseTo(b, within(0.005));
        assertThat(volts.at("P").c().length()).isCloseTo(c, within(0.005));
    }

    @Test
    void aStepBetweenLinesDropsThereAndBack() {
        RadialPlant.Voltages volts = PLANT.voltages(Map.of("P", draw(0.3, Phase.A, Phase.B)));

        // 207.846 − 200·(0.3 − j0.954)·(0.1 + j0.1) = 182.766 + j13.079: 183.23 V
        assertThat(Terminals.lines(Phase.A, Phase.B).volts(volts.at("P")).length())
                .isCloseTo(183.24, within(0.01));
    }

    @Test
    void anImpedanceDrawsWhatTheDividerLeaves() {
        Drawn drawn = new Drawn("P", List.of(Phase.A), 12);
        RadialPlant.Voltages volts = PLANT.voltages(Map.of(
                "P", new RadialPlant.Draw(evenrise.model.electrical.LineValues.ZERO, drawn.siemens(PLANT.nominal()))));

        // 10 Ω behind 0.1 + j0.1 Ω: 1200/|10.1 + j0.1| = 118.806 V
        assertThat(volts.at("P").a().length()).isCloseTo(118.806, within(1e-3));
    }

    /** Supply 0.02 Ω, feeders 0.03 and 0.05 Ω, 100 A in P1: 5 V and 2 V of 120 V. */
    @Test
    void aPanelDipsWithItsSupply() {
        LineMatrix first = RadialPlant.feeder(PhaseSystem.THREE_PHASE, new Impedance(0.03, 0), Impedance.ZERO);
        LineMatrix second = RadialPlant.feeder(PhaseSystem.THREE_PHASE, new Impedance(0.05, 0), Impedance.ZERO);
        RadialPlant plant = new RadialPlant(
                PhaseSystem.THREE_PHASE, 120, new Impedance(0.02, 0), Map.of("P1", first, "P2", second));
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);
        lines.add(List.of(Phase.A), 100, Lag.NONE);

        RadialPlant.Voltages volts = plant.voltages(Map.of(
                "P1", RadialPlant.Draw.of(lines.lines()),
                "P2", RadialPlant.Draw.of(evenrise.model.electrical.LineValues.ZERO)));

        assertThat(100 - volts.at("P1").a().length() / 1.2).isCloseTo(4.167, within(1e-3));
        assertThat(100 - volts.at("P2").a().length() / 1.2).isCloseTo(1.667, within(1e-3));
        assertThat(volts.supply().a().length()).isCloseTo(118, within(1e-9));
    }

    /** Between the legs the rating's whole impedance, from a leg to the tap a third: 3 Ω and 1 Ω. */
    @Test
    void splitPhaseHasAllItsImpedanceBetweenTheLegs() {
        RadialPlant plant = new RadialPlant(PhaseSystem.SPLIT_PHASE, 120, new Impedance(1, 0), Map.of());
        LineCurrents between = new LineCurrents(PhaseSystem.SPLIT_PHASE);
        between.add(List.of(Phase.A, Phase.B), 10, Lag.NONE);
        LineCurrents leg = new LineCurrents(PhaseSystem.SPLIT_PHASE);
        leg.add(List.of(Phase.A), 10, Lag.NONE);

        double betweenVolts = Terminals.lines(Phase.A, Phase.B)
                .volts(plant.voltages(Map.of("P", RadialPlant.Draw.of(between.lines())))
                        .supply())
                .length();

        assertThat(betweenVolts).isCloseTo(240 - 30, within(1e-9));
        assertThat(plant.voltages(Map.of("P", RadialPlant.Draw.of(leg.lines())))
                        .supply()
                        .a()
                        .length())
                .isCloseTo(120 - 10, within(1e-9));
    }
}
