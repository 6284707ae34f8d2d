package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

class DurationsTest {
    @ParameterizedTest
    @CsvSource({"30s, 30000", "2m, 120000", "1m30s, 90000", "500ms, 500", "1h, 3600000", "1.5s, 1500", "2m5ms, 120005"})
    void readsHoursMinutesSecondsMilliseconds(String text, long millis) {
        assertThat(new Durations().convert(text)).isEqualTo(Duration.ofMillis(millis));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "30", "s", "-3s", "3 s", "30s1m", "1e3s", "0s", "0ms", "169h", "99999999999s"})
    void refusesTheRest(String text) {
        assertThatThrownBy(() -> new Durations().convert(text)).isInstanceOf(TypeConversionException.class);
    }
}
