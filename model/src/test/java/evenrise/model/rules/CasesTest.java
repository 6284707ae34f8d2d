package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every folder in cases/ gets the verdict that an independent program gave it; see the README there. */
class CasesTest {
    private static final Offset<Double> NEARLY = within(1e-6);

    static Stream<String> cases() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("src/test/resources/cases"))) {
            return folders
                    .filter(Files::isDirectory)
                    .map(folder -> folder.getFileName().toString())
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void breaksTheSameRules(String name) throws Exception {
        Map<String, Integer> expected = new TreeMap<>();
        expected(name)
                .get("violations")
                .properties()
                .forEach(each -> expected.put(each.getKey(), each.getValue().asInt()));

        Map<String, Integer> broken = new TreeMap<>();
        judge(name).violations().forEach(each -> broken.merge(each.rule(), 1, Integer::sum));

        assertThat(broken).isEqualTo(expected);
        if (name.startsWith("kept-")) {
            assertThat(expected).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void hasTheSameMetrics(String name) throws Exception {
        JsonNode expected = expected(name).get("metrics");

        Metrics metrics = judge(name).metrics();

        assertThat(metrics.peakInrushAmps()).isCloseTo(number(expected, "peak_inrush_a"), NEARLY);
        assertThat(metrics.peakPhase()).hasToString(expected.get("peak_phase").asText());
        assertThat(metrics.peakAtSeconds()).isCloseTo(number(expected, "peak_at_s"), NEARLY);
        assertThat(metrics.supplyImbalancePercent()).isCloseTo(number(expected, "supply_imbalance_pct"), NEARLY);
        assertThat(metrics.worstPanelImbalancePercent())
                .isCloseTo(number(expected, "worst_panel_imbalance_pct"), NEARLY);
        assertThat(metrics.supplyNeutralAmps()).isCloseTo(number(expected, "supply_neutral_a"), NEARLY);
        assertThat(metrics.durationSeconds()).isCloseTo(number(expected, "duration_s"), NEARLY);
        assertThat(metrics.boardsUsed()).isEqualTo((int) number(expected, "boards_used"));
        assertThat(metrics.hardViolations()).isEqualTo((int) number(expected, "hard_violations"));
        assertThat(metrics.objective()).isCloseTo(number(expected, "objective"), NEARLY);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void hasTheSameFiguresAtEveryNode(String name) throws Exception {
        JsonNode expected = expected(name).get("nodes");

        Verdict verdict = judge(name);

        assertThat(verdict.nodes()).hasSize(expected.size()).allSatisfy(node -> {
            JsonNode figures = expected.get(node.node());
            assertThat(node.imbalancePercent()).isCloseTo(number(figures, "imbalance_pct"), NEARLY);
            assertThat(node.deviationAmps()).isCloseTo(number(figures, "deviation_a"), NEARLY);
            assertThat(node.neutralAmps()).isCloseTo(number(figures, "neutral_a"), NEARLY);
            node.runningAmps()
                    .forEach((phase, amps) ->
                            assertThat(amps).isCloseTo(number(figures.get("running_a"), phase.name()), NEARLY));
            node.peaks()
                    .forEach(peak -> assertThat(peak.amps())
                            .isCloseTo(
                                    number(
                                            figures.get("peak_by_phase_a"),
                                            peak.phase().name()),
                                    NEARLY));
        });
    }

    @ParameterizedTest
    @MethodSource("cases")
    void sharesAddUpToThePeak(String name) throws Exception {
        Verdict verdict = judge(name);

        assertThat(verdict.peakShares().stream().mapToDouble(PeakShare::amps).sum())
                .isCloseTo(verdict.metrics().peakInrushAmps(), NEARLY);
    }

    private static Verdict judge(String name) throws IOException, ReflectiveOperationException {
        return Referee.judge(
                CaseFiles.read(file(name, "project"), Project.class), CaseFiles.read(file(name, "plan"), Plan.class));
    }

    private static JsonNode expected(String name) throws IOException {
        return CaseFiles.tree(file(name, "expected"));
    }

    private static Path file(String name, String which) {
        return Path.of("src/test/resources/cases", name, which + ".json");
    }

    private static double number(JsonNode node, String key) {
        return node.get(key).asDouble();
    }
}
