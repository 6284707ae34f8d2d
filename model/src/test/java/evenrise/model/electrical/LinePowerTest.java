package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.PhaseSystem;
import org.junit.jupiter.api.Test;

class LinePowerTest {
    @Test
    void twoPolesSeeTheVoltageBetweenTheirLines() {
        assertThat(LinePower.voltAmpsPerAmp(PhaseSystem.THREE_PHASE, 2, 120)).isCloseTo(207.846, within(1e-3));
        assertThat(LinePower.voltAmpsPerAmp(PhaseSystem.SPLIT_PHASE, 2, 120)).isEqualTo(240);
    }

    @Test
    void threePolesCarryThreeTimesAPhase() {
        assertThat(LinePower.voltAmpsPerAmp(PhaseSystem.THREE_PHASE, 3, 230)).isEqualTo(690);
    }

    @Test
    void currentOfAPowerGivesThatPowerBack() {
        double amps = LinePower.amps(120, 600, 0.9, 0.7);

        // 600 W / (120 V · 0.9) = 5.556 A of fundamental, times √1.49
        assertThat(amps).isCloseTo(5.5556 * Math.sqrt(1.49), within(1e-3));
        assertThat(LinePower.watts(120, amps, 0.9, 0.7)).isCloseTo(600, within(1e-9));
    }
}
