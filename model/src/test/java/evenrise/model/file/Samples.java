package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Project;
import java.nio.charset.StandardCharsets;

/** Project files as text, and small changes to them. */
final class Samples {
    /** One panel of 12 slots, one board of 8 outputs, three loads; nothing is wrong with it. */
    static final String PROJECT = """
        {
          "format": "evenrise-project/1",
          "name": "Hall",
          "supply": {"system": "three-phase", "line_to_neutral_v": 120, "frequency_hz": 60, "rated_a": 400},
          "panels": [
            {"id": "P1", "slots": 12, "rated_a": 225},
            {"id": "P2", "slots": 12, "rated_a": 225}
          ],
          "board_types": [{"id": "eight", "outputs": 8, "start_delay_s": [0, 1], "step_s": [0.5]}],
          "boards": [
            {"id": "B1", "type": "eight", "panel": "P1", "after": null},
            {"id": "B2", "type": "eight", "panel": "P2", "after": "B1"}
          ],
          "shutdown_groups": [{"id": "stage", "on_emergency": "drop"}],
          "loads": [
            {"id": "dsp", "role": "processing", "breaker_a": 16, "running_a": 2, "settle_s": 5},
            {"id": "amp-1", "role": "amplifier", "breaker_a": 20, "running_a": 8, "shutdown_group": "stage"},
            {"id": "amp-2", "role": "amplifier", "breaker_a": 20, "running_a": 8, "comes_after": ["amp-1"]},
            {"id": "light", "role": "auxiliary", "breaker_a": 16, "running_a": 1, "switched": false}
          ]
        }
        """;

    private Samples() {}

    static Reading<Project> read(String text) {
        return ProjectFile.read(text.getBytes(StandardCharsets.UTF_8), "hall.json");
    }

    static Reading<Project> readYaml(String text) {
        return ProjectFile.read(text.getBytes(StandardCharsets.UTF_8), "hall.yaml");
    }

    /** The sample with one piece of its text replaced; the piece must be there. */
    static Reading<Project> with(String piece, String other) {
        assertThat(PROJECT).contains(piece);
        return read(PROJECT.replace(piece, other));
    }

    /** The only problem of a reading without a value. */
    static Problem onlyProblem(Reading<?> reading) {
        assertThat(reading.value()).isEmpty();
        assertThat(reading.problems()).extracting(Problem::message).hasSize(1);
        return reading.problems().get(0);
    }

    static Problem onlyProblemWith(String piece, String other) {
        return onlyProblem(with(piece, other));
    }
}
