package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import org.junit.jupiter.api.Test;

class PhasorTest {
    /** 1/(3 + 4j) = (3 − 4j)/25. */
    @Test
    void hasAnInverse() {
        Phasor inverse = new Phasor(3, 4).inverse();

        assertThat(inverse.real()).isCloseTo(0.12, within(1e-12));
        assertThat(inverse.imaginary()).isCloseTo(-0.16, within(1e-12));
    }

    /** 10 V across 3 + 4j Ω: 1.2 − 1.6j A, a current of 2 A that lags. */
    @Test
    void overAnImpedanceIsTheCurrent() {
        Phasor amps = new Phasor(10, 0).over(new Impedance(3, 4));

        assertThat(amps.real()).isCloseTo(1.2, within(1e-12));
        assertThat(amps.imaginary()).isCloseTo(-1.6, within(1e-12));
    }

    /** 2 − 1j A through 3 + 4j Ω: 6 + 4 + (8 − 3)j V. */
    @Test
    void timesAnImpedanceIsTheVoltage() {
        assertThat(new Phasor(2, -1).times(new Impedance(3, 4))).isEqualTo(new Phasor(10, 5));
    }

    /** From A (0°) to B (−120°) of a star: √3 at +30°; from B to A at −150°; across split-phase, A to B, at 0°. */
    @Test
    void voltagesBetweenLinesStandThirtyDegreesAhead() {
        assertThat(Math.toDegrees(PhaseAngle.radiansBetween(PhaseSystem.THREE_PHASE, Phase.A, Phase.B)))
                .isCloseTo(30, within(1e-9));
        assertThat(Math.toDegrees(PhaseAngle.radiansBetween(PhaseSystem.THREE_PHASE, Phase.B, Phase.A)))
                .isCloseTo(-150, within(1e-9));
        assertThat(Math.toDegrees(PhaseAngle.radiansBetween(PhaseSystem.SPLIT_PHASE, Phase.A, Phase.B)))
                .isCloseTo(0, within(1e-9));
    }

    /** cos and sin of acos 0.8 are 0.8 and 0.6; leading, the reactive part turns round. */
    @Test
    void lagHasAnActiveAndAReactivePart() {
        assertThat(Lag.behind(0.8).cosine()).isCloseTo(0.8, within(1e-12));
        assertThat(Lag.behind(0.8).sine()).isCloseTo(0.6, within(1e-12));
        assertThat(Lag.ahead(0.8).cosine()).isCloseTo(0.8, within(1e-12));
        assertThat(Lag.ahead(0.8).sine()).isCloseTo(-0.6, within(1e-12));
    }
}
