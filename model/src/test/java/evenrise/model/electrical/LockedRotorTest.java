package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.CodeLetter;
import evenrise.model.project.PhaseSystem;
import org.junit.jupiter.api.Test;

/** NEC table 430.7(B): code G is 5.6 to 6.29 kVA for each horsepower. */
class LockedRotorTest {
    /** 10 hp of code G, three phases of 208 V: 10·6.29 kVA over √3·208 V = 174.6 A at most. */
    @Test
    void isApparentPowerOverVoltage() {
        double voltAmpsPerAmp = LinePower.voltAmpsPerAmp(PhaseSystem.THREE_PHASE, 3, 208 / Math.sqrt(3));

        assertThat(LockedRotor.greatestAmps(CodeLetter.G, 10, voltAmpsPerAmp)).isCloseTo(174.6, within(0.05));
        assertThat(LockedRotor.amps(5.6, 10, voltAmpsPerAmp)).isCloseTo(155.4, within(0.05));
    }

    /** 1 hp of code L, 9 to 9.99 kVA, on 120 V: 9.99 kVA / 120 V = 83.25 A. */
    @Test
    void ofOnePhaseGoesByTheVoltageToNeutral() {
        assertThat(LockedRotor.greatestAmps(CodeLetter.L, 1, LinePower.voltAmpsPerAmp(PhaseSystem.THREE_PHASE, 1, 120)))
                .isCloseTo(83.25, within(0.01));
    }
}
