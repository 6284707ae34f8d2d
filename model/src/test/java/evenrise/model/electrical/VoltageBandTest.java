package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VoltageBandTest {
    /** 90 to 110 %: an impedance draws 1.1 times, a constant power 1/0.9 = 1.111 times; of 95 to 110 % the first is more. */
    @Test
    void growsSteadyCurrentsByTheWorseOfImpedanceAndPower() {
        assertThat(new VoltageBand(0.9, 1.1).steadyRatio()).isCloseTo(1.1111, within(1e-4));
        assertThat(new VoltageBand(0.95, 1.1).steadyRatio()).isEqualTo(1.1);
        assertThat(new VoltageBand(0.9, 1.1).inrushRatio()).isEqualTo(1.1);
        assertThat(VoltageBand.NOMINAL.steadyRatio()).isEqualTo(1);
    }

    @Test
    void ofTwoHoldsAllVoltagesOfBoth() {
        assertThat(new VoltageBand(0.9, 1.05).and(new VoltageBand(0.95, 1.1))).isEqualTo(new VoltageBand(0.9, 1.1));
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1.01, 1.1", "0.9, 0.99", "0.9, Infinity", "NaN, 1", "0.9, NaN"})
    void liesAboutTheNominalVoltage(double least, double most) {
        assertThatThrownBy(() -> new VoltageBand(least, most))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("nominal");
    }

    @Test
    void mayBeTheNominalVoltageAlone() {
        assertThat(new VoltageBand(1, 1)).isEqualTo(VoltageBand.NOMINAL);
    }
}
