package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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

        assertThat(Json.of(new Named("a\"\\\n\u001bé"))).contains("\"a\\\"\\\\\\u000a\\u001b\\u00e9\"");
    }
}
