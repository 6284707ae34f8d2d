package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One phase, two systems of a load each, and a lamp that is always on. By hand, in ampere: a starts at P = 60 and is used at
 * F = √2·10 = 14.142; b at P = 30 and √2·20 = 28.284; the lamp is U = √2·2 = 2.828.
 */
class NodeStartTest {
    private static final String PROJECT = """
            {"format": "evenrise-project/1", "name": "two", "supply": {"system": "single-phase", "line_to_neutral_v": 230,
              "frequency_hz": 50, "rated_a": 200}, "systems": [{"id": "a"}, {"id": "b"}], "overlap": "OVERLAP",
             "panels": [{"id": "P1", "slots": 4, "rated_a": 200}],
             "board_types": [{"id": "t", "outputs": 2, "start_delay_s": [0, 3], "step_s": [1]}],
             "boards": [{"id": "A", "type": "t", "panel": "P1"}, {"id": "B", "type": "t", "panel": "P1"}],
             "loads": [
              {"id": "one", "role": "processing", "breaker_a": 20, "running_a": 10, "idle_a": 5, "inrush_peak_a": 60,
               "system": "a"},
              {"id": "two", "role": "processing", "breaker_a": 32, "running_a": 20, "inrush_peak_a": 30, "system": "b"},
              {"id": "lamp", "role": "auxiliary", "breaker_a": 10, "running_a": 2, "switched": false}]}
            """;

    private static final String PLAN = """
            {"format": "evenrise-plan/1", "boards": [{"id": "A", "start_delay_s": 3, "step_s": 1},
              {"id": "B", "start_delay_s": 0, "step_s": 1}],
             "assignments": [
              {"load": "one", "panel": "P1", "slot": 1, "phases": ["A"], "board": "A", "output": 1},
              {"load": "two", "panel": "P1", "slot": 2, "phases": ["A"], "board": "B", "output": 2},
              {"load": "lamp", "panel": "P1", "slot": 3, "phases": ["A"]}]}
            """;

    @TempDir
    private Path folder;

    private Path plan;

    @BeforeEach
    void write() throws IOException {
        plan = Files.writeString(folder.resolve("plan.json"), PLAN);
    }

    private Layout layout(Overlap overlap) throws IOException {
        String word = overlap.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        Project project = ProjectFile.read(
                        Files.writeString(folder.resolve("project.json"), PROJECT.replace("OVERLAP", word)))
                .value()
                .orElseThrow();
        return Layout.of(project, PlanFile.read(plan).value().orElseThrow());
    }

    private static void assertStart(NodeStart start, String system, double rest, double peak, double at, double used) {
        assertThat(start.system()).isEqualTo(Optional.of(system));
        assertThat(start.restAmps().get(Phase.A)).isCloseTo(rest, within(0.001));
        assertThat(start.peaks().get(Phase.A).amps()).isCloseTo(peak, within(0.001));
        assertThat(start.peaks().get(Phase.A).atSeconds()).isEqualTo(at);
        assertThat(start.usedAmps().get(Phase.A)).isCloseTo(used, within(0.001));
    }

    /** Beside a: 2.828 + 28.284 = 31.113; beside b: 2.828 + 14.142 = 16.971. */
    @Test
    void countsTheOthersInUseWhereOneStartsAtATime() throws IOException {
        Layout layout = layout(Overlap.ONE_AT_A_TIME);

        List<NodeStart> starts = layout.starts(Distribution.SUPPLY);

        assertStart(starts.get(0), "a", 31.113, 91.113, 3, 45.255);
        assertStart(starts.get(1), "b", 16.971, 46.971, 1, 45.255);
        assertThat(layout.worstPeak(Distribution.SUPPLY).amps()).isCloseTo(91.113, within(0.001));
    }

    /** Beside a: 2.828 + 30, for b's start is more than its use; beside b: 2.828 + 60. */
    @Test
    void countsTheOthersAtTheirWorstWhereAnyMayStart() throws IOException {
        Layout layout = layout(Overlap.ANY);

        List<NodeStart> starts = layout.starts(Distribution.SUPPLY);

        assertStart(starts.get(0), "a", 32.828, 92.828, 3, 46.971);
        assertStart(starts.get(1), "b", 62.828, 92.828, 1, 91.113);
        assertThat(layout.worstPeak(Distribution.SUPPLY).amps()).isCloseTo(92.828, within(0.001));
    }

    /** One clock: b comes on at 1 s and has died away to 28.284 when a does; 60 + 28.284 + 2.828. */
    @Test
    void isOneWhereAllStartTogether() throws IOException {
        Layout layout = layout(Overlap.TOGETHER);

        List<NodeStart> starts = layout.starts(Distribution.SUPPLY);

        assertThat(starts).hasSize(1);
        assertThat(starts.get(0).system()).isEmpty();
        assertThat(starts.get(0).restAmps().get(Phase.A)).isZero();
        assertThat(starts.get(0).peaks().get(Phase.A).amps()).isCloseTo(91.113, within(0.001));
    }
}
