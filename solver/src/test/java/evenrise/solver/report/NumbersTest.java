package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class NumbersTest {
    @Test
    void writesAPointWhateverTheCountry() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);

            assertThat(Numbers.amps(1234.56)).isEqualTo("1234.6");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void showsNoMinusBeforeAZero() {
        assertThat(Numbers.amps(-0.04)).isEqualTo("0.0");
        assertThat(Numbers.amps(-0.05001)).isEqualTo("-0.1");
    }

    @Test
    void leavesOutIdleZerosOfSeconds() {
        assertThat(Numbers.seconds(12)).isEqualTo("12.0");
        assertThat(Numbers.seconds(0.25)).isEqualTo("0.25");
        assertThat(Numbers.seconds(0.125)).isEqualTo("0.125");
    }

    @Test
    void writesADashWhereThereIsNoFigure() {
        assertThat(Numbers.amps(OptionalDouble.empty())).isEqualTo("-");
        assertThat(Numbers.amps(Double.NaN)).isEqualTo("-");
    }

    @Test
    void shortensLargeCounts() {
        assertThat(Numbers.count(9_999)).isEqualTo("9999");
        assertThat(Numbers.count(12_345)).isEqualTo("12.3 thousand");
        assertThat(Numbers.count(3_456_789)).isEqualTo("3.46 million");
    }
}
