package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.source.TreePlant.Point;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * A source of 240 V to neutral behind 0.4 Ω, a transformer of star to star to 120 V behind 0.1 Ω of its own, panel P1 behind
 * a feeder of 0.2 Ω and panel P2 at its terminals; and a second source of 240 V with P3. The 0.4 Ω are 0.1 Ω seen from 120 V.
 */
class TreePlantTest {
    private static final Offset<Double> NEARLY = within(1e-9);
    private static final LineValues ABOVE = LineValues.nominal(PhaseSystem.THREE_PHASE, 240);
    private static final LineValues BELOW = LineValues.nominal(PhaseSystem.THREE_PHASE, 120);
    private static final LineMatrix HALF = ohms(0.5);

    private final TreePlant plant = new TreePlant(List.of(
            new Point("mains", Optional.empty(), Optional.empty(), ABOVE, ohms(0.4), false),
            new Point("T1", Optional.of("mains"), Optional.of(HALF), BELOW, ohms(0.1), false),
            new Point("P1", Optional.of("T1"), Optional.empty(), BELOW, ohms(0.2), true),
            new Point("P2", Optional.of("T1"), Optional.empty(), BELOW, LineMatrix.ZERO, true),
            new Point("set", Optional.empty(), Optional.empty(), ABOVE, ohms(0.4), false),
            new Point("P3", Optional.of("set"), Optional.empty(), ABOVE, ohms(0.1), true)));

    private static LineMatrix ohms(double each) {
        return LineMatrix.coupled(PhaseSystem.THREE_PHASE, new Phasor(each, 0), Phasor.ZERO);
    }

    private static LineValues amps(double inA) {
        return new LineValues(new Phasor(inA, 0), Phasor.ZERO, Phasor.ZERO);
    }

    private static double aVolts(RadialPlant.Voltages volts, String node) {
        return volts.at(node).a().length();
    }

    /** 30 A at P1 is 15 A above: 6 V of 240 there, 3 V of 120 below, 3 V in the windings, 6 V in the feeder. */
    @Nested
    class OfAKnownCurrent {
        private final RadialPlant.Voltages volts =
                plant.voltages(Map.of("P1", RadialPlant.Draw.of(amps(30)), "P3", RadialPlant.Draw.of(amps(20))));

        @Test
        void dropsAddUpLevelByLevel() {
            assertThat(aVolts(volts, "mains")).isCloseTo(234, NEARLY);
            assertThat(aVolts(volts, "T1")).isCloseTo(114, NEARLY);
            assertThat(aVolts(volts, "P1")).isCloseTo(108, NEARLY);
            assertThat(aVolts(volts, "P2")).isCloseTo(114, NEARLY);
            assertThat(volts.at("P1").b().length()).isCloseTo(120, NEARLY);
        }

        @Test
        void ofAnotherSourceAreItsOwn() {
            assertThat(aVolts(volts, "set")).isCloseTo(232, NEARLY);
            assertThat(aVolts(volts, "P3")).isCloseTo(230, NEARLY);
        }

        @Test
        void addUpByPanelsToo() {
            Plant.Drops drops = plant.drops();
            drops.add("P1", amps(10));
            drops.add("P1", amps(20));
            drops.add("P3", amps(20));

            assertThat(drops.at("mains").a().real()).isCloseTo(6, NEARLY);
            assertThat(drops.at("P1").a().real()).isCloseTo(12, NEARLY);
            assertThat(drops.at("P2").a().real()).isCloseTo(6, NEARLY);
            assertThat(drops.at("P3").a().real()).isCloseTo(10, NEARLY);
            assertThat(plant.dropAt("P2", "P1", amps(30)).a().real()).isCloseTo(6, NEARLY);
            assertThat(plant.dropAt("P3", "P1", amps(30))).isEqualTo(LineValues.ZERO);
            assertThat(plant.drop("P3", "P1", amps(30))).isEqualTo(LineValues.ZERO);
        }
    }

    /** 2 Ω at P1 behind 0.1 + 0.1 + 0.2 Ω: 50 A, 100 V left; at 240 V, 25 A drop 10 V. */
    @Test
    void anImpedanceDrawsWhatTheDividerLeaves() {
        RadialPlant.Voltages volts = plant.voltages(Map.of("P1", new RadialPlant.Draw(LineValues.ZERO, ohms(0.5))));

        assertThat(aVolts(volts, "P1")).isCloseTo(100, NEARLY);
        assertThat(aVolts(volts, "T1")).isCloseTo(110, NEARLY);
        assertThat(aVolts(volts, "P2")).isCloseTo(110, NEARLY);
        assertThat(aVolts(volts, "mains")).isCloseTo(230, NEARLY);
        assertThat(aVolts(volts, "set")).isCloseTo(240, NEARLY);
    }

    /** With 10 A of known current beside it: V = 120 − 0.4·(10 + V/2), so V = 116/1.2 = 96.667 V. */
    @Test
    void anImpedanceAndACurrentShareTheDrop() {
        RadialPlant.Voltages volts = plant.voltages(Map.of("P1", new RadialPlant.Draw(amps(10), ohms(0.5))));

        assertThat(aVolts(volts, "P1")).isCloseTo(116 / 1.2, NEARLY);
        // 10 + 48.333 A: half above, 0.4 Ω
        assertThat(aVolts(volts, "mains")).isCloseTo(240 - 0.2 * (10 + 58 / 1.2), NEARLY);
    }

    @Test
    void nothingDrawnIsNominal() {
        RadialPlant.Voltages volts = plant.voltages(Map.of());

        assertThat(volts.at("P1").c().minus(plant.nominal("P1").c()).length()).isZero();
        assertThat(aVolts(volts, "P1")).isCloseTo(120, NEARLY);
        assertThat(aVolts(volts, "P3")).isCloseTo(240, NEARLY);
    }

    /**
     * Delta to 208Y/120 V, +30°, fed with 480Y/277 V behind 0.9 Ω a line: 40 A in leg A is 40·120/480 = 10 A in line A and
     * back in line B, so the voltage across the winding falls by 2·9 V of 480, which is 4.5 V of 120.
     */
    @Test
    void aLegOfADeltaDropsInBothItsLines() {
        LineMatrix delta = LineMatrix.of((row, column) ->
                Phasor.polar(row == column ? 0.25 : row == (column + 1) % 3 ? -0.25 : 0, Math.toRadians(30)));
        TreePlant below = new TreePlant(List.of(
                new Point(
                        "mains",
                        Optional.empty(),
                        Optional.empty(),
                        LineValues.nominal(PhaseSystem.THREE_PHASE, 480 / Math.sqrt(3)),
                        ohms(0.9),
                        false),
                new Point("P1", Optional.of("mains"), Optional.of(delta), BELOW, LineMatrix.ZERO, true)));

        RadialPlant.Voltages volts = below.voltages(Map.of("P1", RadialPlant.Draw.of(amps(40))));
        assertThat(aVolts(volts, "P1")).isCloseTo(120 - 4.5, NEARLY);
        assertThat(below.dropAt("P1", "P1", amps(40)).a().length()).isCloseTo(4.5, NEARLY);
        // the others' windings share a line with it: 2.25 V in phase opposition
        assertThat(below.dropAt("P1", "P1", amps(40)).b().real()).isCloseTo(-2.25, NEARLY);
        // and as an impedance of 3 Ω, which draws 120/(3 + 0.1125) A
        RadialPlant.Voltages divided = below.voltages(Map.of(
                "P1",
                new RadialPlant.Draw(
                        LineValues.ZERO,
                        LineMatrix.of((row, column) -> row + column == 0 ? new Phasor(1 / 3.0, 0) : Phasor.ZERO))));
        assertThat(aVolts(divided, "P1")).isCloseTo(120 * 3 / 3.1125, NEARLY);
    }

    @Test
    void knowsWhatCarriesWhat() {
        assertThat(plant.carrying("P1")).containsExactly("P1", "T1");
        assertThat(plant.carrying("P3")).containsExactly("P3", "set");
        assertThat(plant.carrying("mains")).containsExactly("mains");
        assertThat(plant.zones("P1")).containsExactly("P1");
        assertThat(plant.touches("mains", "P2")).isTrue();
        assertThat(plant.touches("set", "P2")).isFalse();
        assertThat(plant.isPanel("P1")).isTrue();
        assertThat(plant.isPanel("T1")).isFalse();
        assertThat(plant.nominal("mains")).isEqualTo(ABOVE);
        assertThat(plant.nominal("P2").line(Phase.A).real()).isEqualTo(120);
    }
}
