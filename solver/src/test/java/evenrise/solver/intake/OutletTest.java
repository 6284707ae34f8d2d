package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutletTest {
    @ParameterizedTest(name = "{0}: {1} A")
    @CsvSource({"16 A, 16", "20A, 20", "L6-30R, 30", "5-20P, 20", "CEE 32, 32", "3x63 A, 63", "15, 15", "16 Amp, 16"})
    void tellsItsRating(String text, double amps) {
        assertThat(Outlet.amps(text)).hasValue(amps);
    }

    @Test
    void mayTellNone() {
        for (String text : new String[] {"", "hard-wired", "0 A", "C13", "1.5 A", "blue"}) {
            assertThat(Outlet.amps(text)).as(text).isEmpty();
        }
    }
}
