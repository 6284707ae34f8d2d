package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CrestTest {
    /** √2·(1 + r)/√(1 + r²) by hand: r = 0.4: 1.41421·1.4/√1.16 = 1.97990/1.07703 = 1.8383. */
    @ParameterizedTest
    @CsvSource({"0, 1.41421", "0.3, 1.76094", "0.4, 1.83829", "0.7, 1.96957", "1, 2.0"})
    void isThatOfBothCrestsTogether(double thirdHarmonic, double expected) {
        assertThat(Crest.ofThirdHarmonic(thirdHarmonic)).isCloseTo(expected, within(1e-5));
    }

    /** The waveform itself, a thousand instants, at every angle between the two: never above, and reached where they meet. */
    @Test
    void noAngleOfTheThirdHarmonicExceedsIt() {
        for (double r : new double[] {0.05, 0.3, 0.4, 0.8, 1, 1.6}) {
            double greatest = 0;
            for (int angle = 0; angle < 360; angle += 5) {
                double squares = 0;
                double crest = 0;
                for (int n = 0; n < 1000; n++) {
                    double t = 2 * Math.PI * n / 1000;
                    double amps = Math.cos(t) + r * Math.cos(3 * t + Math.toRadians(angle));
                    squares += amps * amps;
                    crest = Math.max(crest, Math.abs(amps));
                }
                greatest = Math.max(greatest, crest / Math.sqrt(squares / 1000));
            }
            assertThat(greatest).isLessThanOrEqualTo(Crest.ofThirdHarmonic(r) + 1e-12);
            assertThat(greatest).isCloseTo(Crest.ofThirdHarmonic(r), within(1e-9));
        }
    }
}
