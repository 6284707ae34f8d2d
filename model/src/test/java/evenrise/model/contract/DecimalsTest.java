package evenrise.model.contract;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 1.5, 2.5, -0.5, -1.5, -2.5, 0.49999999999999994, 3.2, -3.7, 1e15, 1e300})
    void isWholeAsTheJavaLibraryRounds(double value) {
        assertThat(Decimals.whole(value)).isEqualTo(Math.rint(value));
    }

    @ParameterizedTest
    @CsvSource({
        // figure, beside, decimals, shown: one digit more than looks equal
        "5.04, 5, 1, 5.04",
        "5, 5.04, 1, 5.00",
        "5.004, 5, 1, 5.004",
        "5.2, 5, 1, 5.2",
        "5, 5, 1, 5.0",
        "10.0000000000001, 10, 2, 10.00",
        "0.0001, 0, 2, 0.0001"
    })
    void tellsTwoNumbersApart(double figure, double other, int least, String shown) {
        assertThat(Decimals.apart(figure, other, least)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"80.0004, 80, 80.0004", "80, 80.0004, 80.0000", "80.4, 80, 80.4", "80, 80.4, 80"})
    void keepsThousandthsWhereTheyTellApart(double figure, double other, String shown) {
        assertThat(Decimals.toThousandths(figure, other)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({
        "10.080000000000002, 10.08",
        "719.9999999999973, 720.0",
        "-1e-15, 0.0",
        "0.123456789, 0.123456789",
        "1e300, 1.0E300",
        "NaN, NaN"
    })
    void tablesOfValuesShowNoRemainders(double value, String shown) {
        assertThat(Decimals.value(value)).isEqualTo(shown);
    }
}
