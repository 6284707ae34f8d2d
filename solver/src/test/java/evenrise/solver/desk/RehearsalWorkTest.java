package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.event.EntryKind;
import evenrise.solver.desk.RehearsalAnswers.ChanceView;
import evenrise.solver.desk.RehearsalAnswers.PlayedScript;
import evenrise.solver.desk.RehearsalAnswers.ScatterView;
import evenrise.solver.desk.RehearsalAnswers.ScriptView;
import evenrise.solver.desk.RehearsalAnswers.StepView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RehearsalWorkTest {
    private static final String ON_AND_LOST =
            "\"events\": [{\"at_s\": 2, \"event\": \"system-on\"}, {\"event\": \"mains\", \"voltage_pct\": 0}]";

    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() {
        routes = Hall.routes(Hall.in(folder));
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void happeningsKeepTheirTimesAndOthersComeOnceAllIsAtRest() {
        PlayedScript played = (PlayedScript) asked("/api/script/play", "{" + ON_AND_LOST + "}");

        assertThat(played.happened().get(0).atSeconds()).hasValue(2);
        // The last breaker closes 4.5 s after the command; no load has to settle, and 5 s follow.
        assertThat(played.happened().get(1).atSeconds()).hasValue(2 + 4.5 + 5);
        assertThat(played.steps().stream()
                        .filter(each -> each.kind() == EntryKind.CLOSES)
                        .map(StepView::load))
                .hasSize(4);
        assertThat(played.parts()).extracting(each -> each.text()).contains("on command", "mains fail");
    }

    @Test
    void theCurrentIsThatOfTheNodeThatIsAskedFor() {
        PlayedScript supply = (PlayedScript) asked("/api/script/play", "{" + ON_AND_LOST + "}");
        PlayedScript panel = (PlayedScript) asked("/api/script/play", "{" + ON_AND_LOST + ", \"node\": \"P2\"}");

        // P2 has the two amplifiers, 90 A the greater; the supply has the rest as well.
        assertThat(panel.nodes()).contains("supply", "P1", "P2");
        assertThat(most(panel)).isBetween(90.0, most(supply));
        assertThat(panel.readings()).allSatisfy(phase -> {
            for (int i = 0; i < phase.seconds().size(); i++) {
                assertThat(phase.boundAmps().get(i))
                        .isGreaterThanOrEqualTo(phase.drawnAmps().get(i));
            }
        });
    }

    private static double most(PlayedScript played) {
        return played.readings().stream()
                .flatMap(each -> each.boundAmps().stream())
                .mapToDouble(each -> each)
                .max()
                .orElseThrow();
    }

    @Test
    void aNodeThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> asked("/api/script/play", "{" + ON_AND_LOST + ", \"node\": \"P9\"}"))
                .hasMessageContaining("no such");
    }

    @Test
    void aKeptScriptComesBackAsItWas() {
        asked("/api/script/keep", "{\"name\": \"bad evening\", " + ON_AND_LOST + "}");

        ScriptView back = (ScriptView) asked("/api/script/open", "{\"name\": \"bad evening\"}");
        assertThat(back.events()).hasSize(2);
        assertThat(back.events().get(0).atSeconds()).hasValue(2);
        assertThat(back.events().get(1).voltagePercent()).hasValue(0);
        assertThat(folder.resolve("bad evening.script.json")).content().contains("evenrise-script/1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../x", "a/b", "", ".x"})
    void noNameOfAScriptLeadsOut(String name) {
        assertThatThrownBy(() -> asked("/api/script/keep", "{\"name\": \"" + name + "\", " + ON_AND_LOST + "}"))
                .isInstanceOf(RuntimeException.class);
        assertThat(folder.resolveSibling("x.script.json")).doesNotExist();
    }

    /** The same seed draws the same; no trial goes beyond what is told as the range. */
    @Test
    void chanceIsToldBesideTheEnvelope() {
        ChanceView one = (ChanceView) asked("/api/chance", "{\"trials\": 200, \"seed\": 7}");
        ChanceView same = (ChanceView) asked("/api/chance", "{\"trials\": 200, \"seed\": 7}");
        ChanceView other = (ChanceView) asked("/api/chance", "{\"trials\": 200, \"seed\": 8}");

        assertThat(one.nodes()).isEqualTo(same.nodes()).isNotEqualTo(other.nodes());
        for (ScatterView each : one.nodes()) {
            assertThat(each.peakAmps())
                    .isSortedAccordingTo((a, b) -> Double.compare(a.value(), b.value()))
                    .allMatch(percentile -> percentile.value() <= each.greatestAmps());
            assertThat(each.greatestAmps()).isLessThanOrEqualTo(each.rangeAmps() + 1e-9);
        }
        double peak = Hall.work(folder).sheet().plan().orElseThrow().metrics().peakInrushAmps();
        assertThat(one.nodes().get(0).envelopeAmps()).isEqualTo(peak, within(0.05));
    }
}
