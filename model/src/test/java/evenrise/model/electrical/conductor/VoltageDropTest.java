package evenrise.model.electrical.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import org.junit.jupiter.api.Test;

/** 10 A at 100 V through 1 + 1j Ω, one way. */
class VoltageDropTest {
    private static double drop(Lag lag) {
        return VoltageDrop.exactVolts(100, 10, lag, new Impedance(1, 1), 1);
    }

    /** In phase: 100 − |90 − 10j| = 100 − √8200 = 9.4461 V. */
    @Test
    void isThatOfThePhasors() {
        assertThat(drop(Lag.NONE)).isCloseTo(9.4461, within(1e-4));
    }

    /** (8 − 6j)·(1 + 1j) = 14 + 2j: 100 − |86 − 2j| = 13.9767 V. Leading, (8 + 6j)·(1 + 1j) = 2 + 14j: 100 − |98 − 14j| = 1.0050 V. */
    @Test
    void isMoreBehindAndLessAhead() {
        assertThat(drop(Lag.behind(0.8))).isCloseTo(13.9767, within(1e-4));
        assertThat(drop(Lag.ahead(0.8))).isCloseTo(1.0050, within(1e-4));
    }
}
