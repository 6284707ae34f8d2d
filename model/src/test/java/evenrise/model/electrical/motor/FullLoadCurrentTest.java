package evenrise.model.electrical.motor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values of tables 430.248 and 430.250 as published examples quote them, voltages as systems have them. */
class FullLoadCurrentTest {
    @ParameterizedTest
    @CsvSource({
        "3, 207.846, 10.6", // 120·√3
        "10, 208, 30.8",
        "25, 460, 34", // annex D8
        "30, 480, 40",
        "100, 460, 124",
        "0.5, 208, 2.4",
        "200, 240, 480",
        "5, 199.19, 17.5", // 115·√3
        "2, 600, 2.7"
    })
    void isThatOfTheTableForThreePhases(double horsepower, double volts, double amps) {
        assertThat(FullLoadCurrent.threePhaseAmps(horsepower, volts)).hasValue(amps);
    }

    @ParameterizedTest
    @CsvSource({"5, 240, 28", "7.5, 230, 40", "0.1667, 120, 4.4", "1, 207.846, 8.8", "2, 230, 12"})
    void isThatOfTheTableForOnePhase(double horsepower, double volts, double amps) {
        assertThat(FullLoadCurrent.singlePhaseAmps(horsepower, volts)).hasValue(amps);
    }

    @Test
    void isInterpolatedBetweenRows() {
        // 4 hp, half-way between 3 hp (10.6 A) and 5 hp (16.7 A)
        assertThat(FullLoadCurrent.threePhaseAmps(4, 208).getAsDouble())
                .isCloseTo(13.65, org.assertj.core.api.Assertions.within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"0.4, 208", "201, 208", "3, 115", "5, 400", "5, 277", "5, 690"})
    void isEmptyWhereTheTableHasNone(double horsepower, double volts) {
        assertThat(FullLoadCurrent.threePhaseAmps(horsepower, volts)).isEqualTo(OptionalDouble.empty());
    }

    @Test
    void hasNoSinglePhaseColumnAboveTwoHundredAndFortyVolts() {
        assertThat(FullLoadCurrent.singlePhaseAmps(1, 277)).isEmpty();
        assertThat(FullLoadCurrent.singlePhaseAmps(1, 480)).isEmpty();
    }

    /** The tables' own ranges of system voltage and half a volt either side; 200 and 208 V part half-way. */
    @ParameterizedTest
    @CsvSource({
        "1, 109.4, 0", "1, 109.5, 8.4", "1, 120.5, 8.4", "1, 120.6, 0", "1, 194.9, 0", "1, 195, 4.8", "1, 203.9, 4.8",
        "1, 204, 4.6", "1, 215.9, 4.6", "1, 216, 0", "1, 219.4, 0", "1, 219.5, 4.2", "1, 240.5, 4.2", "1, 240.6, 0",
        "1, 439.4, 0", "1, 439.5, 2.1", "1, 480.5, 2.1", "1, 480.6, 0", "1, 549.4, 0", "1, 549.5, 1.7", "1, 600.5, 1.7",
        "1, 600.6, 0"
    })
    void goesByTheColumnOfTheSystemsVoltage(double horsepower, double volts, double amps) {
        assertThat(FullLoadCurrent.threePhaseAmps(horsepower, volts))
                .isEqualTo(amps == 0 ? OptionalDouble.empty() : OptionalDouble.of(amps));
    }
}
