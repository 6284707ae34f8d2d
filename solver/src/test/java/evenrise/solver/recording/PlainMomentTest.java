package evenrise.solver.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Beside the way by which short tables are read, with the library's own dates. */
class PlainMomentTest {
    private static double seconds(String text) {
        byte[] cell = text.getBytes(StandardCharsets.UTF_8);
        return new PlainMoment().seconds(cell, cell.length, false);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-03-14 09:30:00",
                "2026-03-14T09:30:59.25",
                "2024-02-29 23:59:59.999",
                "1970-01-01T00:00:00.000000001",
                "2000-12-31 00:00:00.5"
            })
    void isTheSameAsInAShortTable(String text) {
        assertThat(seconds(text)).isEqualTo(RecordingCsv.seconds(text, false).orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-02-29 09:30:00",
                "2026-13-01 09:30:00",
                "2026-03-14 24:00:00",
                "2026-03-14 09:60:00",
                "2026-03-14 09:30:00Z",
                "2026-03-14 09:30:00,5",
                "2026-03-14 09:30:00.",
                "2026-03-14 09:30",
                "2026-03-1x 09:30:00",
                "14.03.2026 09:30:00",
                "09:30:00"
            })
    void isLeftToThatWhereItIsAnythingElse(String text) {
        assertThat(seconds(text)).isNaN();
    }
}
