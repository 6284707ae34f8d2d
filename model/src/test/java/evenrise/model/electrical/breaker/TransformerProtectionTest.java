package evenrise.model.electrical.breaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** NEC table 450.3(B) and 240.21(C). */
class TransformerProtectionTest {
    /** From 9 A 125 % and the next standard rating of 240.6(A); below it 167 %, below 2 A 300 %, neither rounded up. */
    @ParameterizedTest(name = "{0} A: {1} A")
    @CsvSource({
        "90.21, 125", // 75 kVA, 480 V: 112.8
        "16, 20", // 20.0
        "9, 15", // 11.25
        "8.9, 14.863",
        "2, 3.34",
        "1.9, 5.7"
    })
    void aloneOnThePrimaryIsFiveFourthsOrForSmallOnesMore(double rated, double most) {
        assertThat(TransformerProtection.primaryAloneAmps(rated)).isCloseTo(most, within(1e-9));
    }

    /** 75 kVA at 480 V: 2.5 · 90.21 = 225.5 A; of a small one as much. */
    @Test
    void besideTheSecondarysIsTwoAndAHalfTimes() {
        assertThat(TransformerProtection.primaryAmps(90.21)).isCloseTo(225.525, within(1e-9));
        assertThat(TransformerProtection.primaryAmps(1)).isEqualTo(2.5);
    }

    /** 75 kVA at 208 V: 1.25 · 208.2 = 260.2, next 300 A; below 9 A 167 %, however small. */
    @ParameterizedTest(name = "{0} A: {1} A")
    @CsvSource({"208.2, 300", "9, 15", "8, 13.36", "1, 1.67"})
    void onTheSecondaryIsFiveFourthsOrForSmallOnesFiveThirds(double rated, double most) {
        assertThat(TransformerProtection.secondaryAmps(rated)).isCloseTo(most, within(1e-9));
    }

    /** No rating stands above 6000 A (240.6(A)): the current itself. */
    @Test
    void aboveTheLastRatingIsFiveFourthsItself() {
        assertThat(TransformerProtection.secondaryAmps(5000)).isEqualTo(6250);
    }

    /** 240.21(C)(2) and (6): a tenth up to 10 ft, 3.048 m; a third up to 25 ft, 7.62 m. */
    @Test
    void ofItsConductorsGoesByTheirLength() {
        assertThat(TransformerProtection.conductorAmps(300, 3.0)).isEqualTo(30);
        assertThat(TransformerProtection.conductorAmps(300, 3.048)).isEqualTo(30);
        assertThat(TransformerProtection.conductorAmps(300, 3.05)).isEqualTo(100);
        assertThat(TapConductor.SHORT_METRES).isCloseTo(3.048, within(1e-12));
        assertThat(TapConductor.LONG_METRES).isCloseTo(7.62, within(1e-12));
    }
}
