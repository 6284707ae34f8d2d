package evenrise.model.electrical;

import static evenrise.model.Fixtures.aLoad;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.conductor.VoltageDrop;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import org.junit.jupiter.api.Test;

class LagTest {
    @Test
    void ofALoadIsNegativeWhereItLeads() {
        assertThat(Lag.of(aLoad("L").powerFactor(0.5).build()).radians()).isCloseTo(Math.PI / 3, within(1e-12));
        assertThat(Lag.of(aLoad("L")
                                .powerFactor(0.5)
                                .with(it -> it.leading(true))
                                .build())
                        .radians())
                .isCloseTo(-Math.PI / 3, within(1e-12));
    }

    /**
     * 10 A at 0.6 leading through 2·(0.1 + j0.2) Ω from 100 V: 20·(0.6 + j0.8)·(0.1 + j0.2) = −2 + j4 V; the load has
     * |102 − j4| = 102.078 V.
     */
    @Test
    void aheadMakesTheVoltageRise() {
        Impedance conductor = new Impedance(0.1, 0.2);

        assertThat(VoltageDrop.exactVolts(100, 10, Lag.ahead(0.6), conductor, 2))
                .isCloseTo(-2.078, within(0.001));
    }

    /** A at 0.866 lagging stands at −30°, B at 0.866 leading at −120° + 30° = −90°: 10·√(2 + 2·cos 60°) = 17.32 A. */
    @Test
    void bringsPhasesTogetherOrApartInANeutral() {
        NeutralCurrent neutral = new NeutralCurrent(PhaseSystem.THREE_PHASE);
        double cos30 = Math.sqrt(3) / 2;

        neutral.add(Phase.A, 10, Lag.behind(cos30), 0);
        neutral.add(Phase.B, 10, Lag.ahead(cos30), 0);

        assertThat(neutral.amps()).isCloseTo(17.32, within(0.01));
    }

    /** Between A and B the voltage stands at +30°; 60° ahead of it the current stands at 90°. */
    @Test
    void turnsTheCurrentBetweenTwoLines() {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);

        lines.add(List.of(Phase.A, Phase.B), 10, Lag.ahead(0.5));

        assertThat(lines.line(Phase.A).angleRadians()).isCloseTo(Math.PI / 2, within(1e-9));
    }
}
