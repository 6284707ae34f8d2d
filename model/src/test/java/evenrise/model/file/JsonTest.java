package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class JsonTest {
    record Sample(
            String name,
            double peakAmps,
            OptionalDouble limitAmps,
            Optional<Boolean> projectChanged,
            Phase phase,
            Map<Phase, Double> runningAmps,
            List<Integer> slots,
            List<String> none) {}

    @Test
    void writesRecordsInTheSpellingOfTheFiles() {
        Sample sample = new Sample(
                "hall",
                812.5,
                OptionalDouble.empty(),
                Optional.of(true),
                Phase.B,
                Map.of(Phase.A, 1.5),
                List.of(1, 3),
                List.of());

        assertThat(Json.of(sample)).isEqualTo("""
                        {
                          "name": "hall",
                          "peak_a": 812.5,
                          "limit_a": null,
                          "project_changed": true,
                          "phase": "B",
                          "running_a": {
                            "A": 1.5
                          },
                          "slots": [
                            1,
                            3
                          ],
                          "none": []
                        }""");
    }

    @Test
    void escapesWhatCouldActOnATerminalOrBreakAString() {
        record Named(String name) {}

        assertThat(Json.of(new Named("a\"\\\n\u001bé"))).contains("\"a\\\"\\\\\\n\\u001B\\u00E9\"");
    }

    @Test
    void writesWholeNumbersThatMayBeAbsentAsNumbersOrNull() {
        record Places(OptionalInt slot, OptionalInt output, OptionalLong moves) {}

        assertThat(Json.of(new Places(OptionalInt.of(3), OptionalInt.empty(), OptionalLong.of(7))))
                .isEqualTo("{\n  \"slot\": 3,\n  \"output\": null,\n  \"moves\": 7\n}");
    }

    @Test
    void writesNothingThatItDoesNotKnow() {
        record Strange(Object any) {}

        assertThatThrownBy(() -> Json.of(new Strange(new StringBuilder("x"))))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
