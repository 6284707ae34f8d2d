package evenrise.model.electrical.breaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.project.TripCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisconnectionTest {
    /** IEC 60364-4-41 table 41.1, TN, a.c.: a border belongs to the lower band. */
    @ParameterizedTest
    @CsvSource({"100, 0.8", "120, 0.8", "127, 0.4", "230, 0.4", "240, 0.2", "277, 0.2", "400, 0.2", "401, 0.1"})
    void takesTheTimeOfTheVoltage(double volts, double seconds) {
        assertThat(Disconnection.finalSeconds(volts)).isEqualTo(seconds);
    }

    @Test
    void givesLargeAndDistributionCircuitsFiveSeconds() {
        assertThat(Disconnection.seconds(230, 63, true)).isEqualTo(0.4);
        assertThat(Disconnection.seconds(230, 80, true)).isEqualTo(5);
        assertThat(Disconnection.seconds(230, 16, false)).isEqualTo(5);
    }

    /** BS 7671 table 41.3 (Cmin 0.95, 230 V), as published on three pages. */
    @ParameterizedTest
    @CsvSource({
        "B, 6, 7.28",
        "B, 16, 2.73",
        "B, 32, 1.37",
        "B, 63, 0.69",
        "C, 6, 3.64",
        "C, 16, 1.37",
        "C, 32, 0.68",
        "C, 63, 0.35",
        "D, 6, 1.82",
        "D, 20, 0.55",
        "D, 63, 0.17"
    })
    void agreesWithThePublishedLoops(TripCurve curve, double amps, double ohms) {
        double trips = InstantaneousBand.of(curve).mostRatio() * amps;

        assertThat(Disconnection.mostLoopOhms(FaultCurrent.LEAST_VOLTAGE_FACTOR, 230, trips))
                .isCloseTo(ohms, within(0.0051));
    }
}
