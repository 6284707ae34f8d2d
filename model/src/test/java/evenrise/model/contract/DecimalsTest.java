package evenrise.model.contract;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalsTest {
    @ParameterizedTest
    @CsvSource({
        "20, 20",
        "6.3, 6.3",
        "0.125, 0.125",
        "79.9996, 80",
        "1200, 1200",
        "-0.0001, 0",
        "-1.50, -1.5",
        "0.0005, 0.001",
        "1e16, 10000000000000000",
        "Infinity, Infinity",
        "NaN, NaN"
    })
    void roundsToAThousandthWithoutIdleZeros(double value, String shown) {
        assertThat(Decimals.toThousandths(value)).isEqualTo(shown);
    }
}
