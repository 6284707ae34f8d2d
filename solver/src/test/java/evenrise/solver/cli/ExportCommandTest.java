package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The small hall, whose amplifier and processor take a curve and a power factor from a default. */
class ExportCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String WITH_DEFAULTS = SmallHall.PROJECT.replace(
            "\"loads\":", "\"defaults\": [{\"gives\": {\"curve\": \"D\", \"power_factor\": 0.9}}], \"loads\":");

    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void writeTheProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), WITH_DEFAULTS);
    }

    private Shell.Result run(String... arguments) {
        return new Shell(SmallHall.sound()).run(arguments);
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    @Nested
    class Resolved {
        @Test
        void statesAllThatLoadsHaveAndNoDefaults() throws IOException {
            Shell.Result result = run("export", project.toString(), "--resolved", "-o", at("resolved.json"));

            assertThat(result.code()).as(result.err()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).contains("each load stating all that it has, and without defaults");
            JsonNode written = JSON.readTree(folder.resolve("resolved.json").toFile());
            assertThat(written.has("defaults")).isFalse();
            assertThat(written.path("loads")).allSatisfy(load -> {
                assertThat(load.path("curve").asText()).isEqualTo("D");
                assertThat(load.path("power_factor").asDouble()).isEqualTo(0.9);
            });
        }

        @Test
        void isJudgedLikeTheProject() throws IOException {
            run("plan", project.toString(), "-o", at("plan.json"));
            run("export", project.toString(), "--resolved", "-o", at("resolved.json"));

            JsonNode stated = JSON.readTree(
                    run("audit", project.toString(), at("plan.json"), "--json").out());
            JsonNode resolved = JSON.readTree(
                    run("audit", at("resolved.json"), at("plan.json"), "--json").out());

            assertThat(resolved.path("metrics")).isEqualTo(stated.path("metrics"));
            assertThat(resolved.path("review")).isEqualTo(stated.path("review"));
        }
    }

    @Test
    void withoutItKeepsDefaultsAndLoadsAsTheyAre() throws IOException {
        run("export", project.toString(), "-o", at("again.json"));

        JsonNode again = JSON.readTree(folder.resolve("again.json").toFile());
        assertThat(again.path("defaults"))
                .isEqualTo(JSON.readTree(WITH_DEFAULTS).path("defaults"));
        assertThat(again.path("loads")).isEqualTo(JSON.readTree(WITH_DEFAULTS).path("loads"));
    }

    @Test
    void overwritesNoInput() {
        Shell.Result result = run("export", project.toString(), "-o", project.toString());

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("would overwrite what it is made from");
    }

    @Test
    void auditSaysWhatLoadsTook() {
        run("plan", project.toString(), "-o", at("plan.json"));

        String audit = run("audit", project.toString(), at("plan.json")).out();

        assertThat(audit)
                .contains("Taken from defaults", "Entry 1, for all loads", "curve D: 2 loads (", "power_factor 0.9: ");
    }
}
