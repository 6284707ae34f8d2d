package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.solver.app.Jobs;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Five three-pole loads of 45 A each on a supply that may run 0.8 · 100 A = 80 A a phase. Two of them are 90 A, 10 A too
 * much on each of three phases, which breaks less than a load without a place. A third would be 55 A too much on each.
 */
class PlaceAllTest {
    private static final String LOAD =
            "{\"id\": \"rack-%d\", \"role\": \"auxiliary\", \"poles\": 3, \"breaker_a\": 63, \"switched\": false,"
                    + " \"running_a\": 45}";
    private static final String PROJECT = """
            {
              "format": "evenrise-project/1",
              "name": "Too much",
              "supply": {"system": "three-phase", "line_to_neutral_v": 230, "frequency_hz": 50, "rated_a": 100},
              "panels": [{"id": "P1", "slots": %d, "rated_a": 400}],
              "board_types": [],
              "boards": [],
              "loads": [%s]
            }
            """;

    private record Planned(int code, String out, Plan plan) {}

    @TempDir
    private Path folder;

    private String loads;

    @BeforeEach
    void fiveLoads() {
        loads = String.join(", ", Stream.of(1, 2, 3, 4, 5).map(LOAD::formatted).toList());
    }

    private Planned planned(int slots, String... options) throws IOException {
        Path project = Files.writeString(folder.resolve("much.project.json"), PROJECT.formatted(slots, loads));
        Path plan = folder.resolve("much.plan.json");
        String[] arguments = Stream.concat(
                        Stream.of("plan", project.toString(), "-o", plan.toString(), "--moves", "2000"),
                        Arrays.stream(options))
                .toArray(String[]::new);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]),
                out,
                new ByteArrayOutputStream(),
                StandardCharsets.UTF_8,
                false,
                false,
                false);
        int code = Evenrise.run(terminal, new Jobs(), arguments);
        return new Planned(
                code,
                out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " "),
                PlanFile.read(Files.readAllBytes(plan), "plan").value().orElseThrow());
    }

    /** 3 · 45 A = 135 A a phase are left out of every figure. */
    @Test
    void withoutItLoadsAreLeftOutAndTheFiguresSayHowMuch() throws IOException {
        Planned result = planned(30);

        assertThat(result.plan().assignments()).hasSize(2);
        assertThat(result.out())
                .contains("without 3 loads that have no place, 135 A a phase")
                .contains("the supply phase A runs at 90 A, allowed are 80 % of 100 A");
        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
        assertThat(result.plan().madeBy().orElseThrow().placesAll()).isEmpty();
    }

    /** 5 · 45 A = 225 A a phase. */
    @Test
    void withItEveryLoadHasAPlaceAndTheOverloadIsNamed() throws IOException {
        Planned result = planned(30, "--place-all");

        assertThat(result.plan().assignments()).hasSize(5);
        assertThat(result.out())
                .doesNotContain("no place")
                .contains("the supply phase A runs at 225 A, allowed are 80 % of 100 A, which is 80 A.");
        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
        assertThat(result.plan().madeBy().orElseThrow().placesAll()).contains(true);
    }

    /** Twelve slots are room for four breakers of three poles. */
    @Test
    void whatFindsNoSlotStaysWithoutAPlaceAllTheSame() throws IOException {
        Planned result = planned(12, "--place-all");

        assertThat(result.plan().assignments()).hasSize(4);
        assertThat(result.out()).contains("without 1 load that has no place, 45 A a phase");
    }
}
