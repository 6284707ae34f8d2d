package evenrise.solver.table;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AmountTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "12|12|''",
                "2.4 kW|2.4|kw",
                "2,4 kW|2.4|kw",
                "1.200,5 W|1200.5|w",
                "1,200.5 W|1200.5|w",
                "1 200,5W|1200.5|w",
                "1'200|1200|''",
                "1,200|1200|''",
                "0,120|0.12|''",
                "1.200.000|1200000|''",
                "-3|-3|''",
                "1e3 VA|1000|va",
                "95 %|95|%",
                "16A|16|a"
            })
    void isReadAsPeopleWriteIt(String text, double value, String unit) {
        assertThat(Amount.of(text)).contains(new Amount(value, unit));
    }

    @Test
    void loneMarkBeforeThreeDigitsIsToldByTheSheet() {
        assertThat(Amount.of("1.800 W", true)).contains(new Amount(1800, "w"));
        assertThat(Amount.of("1.800 W", false)).contains(new Amount(1.8, "w"));
        assertThat(Amount.of("1,900", true)).contains(new Amount(1.9, ""));
        assertThat(Amount.of("1,900", false)).contains(new Amount(1900, ""));
        assertThat(Amount.showsDecimalComma("2,5 kW")).isTrue();
        assertThat(Amount.showsDecimalComma("1,900 W")).isFalse();
    }

    @Test
    void isRefusedWhereItIsNoNumberWithOneUnit() {
        for (String text : new String[] {"", "abc", "2 x 16 A", "16 A / 32 A", "#REF!", "1,2,3.4.5", "=1+1", "12-14"}) {
            assertThat(Amount.of(text)).as(text).isEmpty();
        }
    }
}
