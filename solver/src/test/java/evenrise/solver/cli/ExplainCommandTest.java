package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.rules.Rules;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An amplifier in slot 3 (B) on output 2 of a board set to 0.5 s and steps of 0.25 s; a processor in slot 1 (A). */
class ExplainCommandTest {
    @TempDir
    private Path folder;

    private Path project;
    private Path plan;

    @BeforeEach
    void planTheProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        plan = folder.resolve("hall.plan.json");
        new Shell(SmallHall.sound()).run("plan", project.toString());
    }

    private Shell.Result explain(String... rest) {
        List<String> arguments = new ArrayList<>(List.of("explain", project.toString(), plan.toString()));
        arguments.addAll(List.of(rest));
        return new Shell(SmallHall.sound()).run(arguments.toArray(String[]::new));
    }

    @Test
    void saysWhereALoadIsAndWhyNotEarlier() {
        Shell.Result result = explain("amp");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.err()).isEmpty();
        assertThat(result.out())
                .contains("Sub left. Panel P1 slot 3, phase B; output 2 of board B1, on at 0.75 s.")
                .contains("Why not earlier", "would bring it on earlier", "on at 0.25 s")
                .containsPattern("slot of dsp +P1 +1 +A");
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void aLoadWithoutATimeIsNotAskedWhyItIsNotEarlier() {
        assertThat(explain("dsp").out()).contains("not switched").doesNotContain("Why not earlier");
    }

    @Test
    void writesEveryPlaceForOtherPrograms() throws IOException {
        JsonNode sheet = new ObjectMapper().readTree(explain("amp", "--json").out());

        assertThat(sheet.path("format").asText()).isEqualTo("evenrise-explanation/1");
        assertThat(sheet.path("places")).isNotEmpty().allSatisfy(place -> {
            assertThat(place.has("objective_change")).isTrue();
            assertThat(place.path("breaks").isArray()).isTrue();
        });
    }

    @Test
    void saysWhatLowersThePeak() {
        assertThat(explain("--peak").out()).contains("The supply peaks at 100.0 A on phase B at 0.7", "amp");
    }

    @Test
    void saysWhatEachRuleAsks() {
        assertThat(Rules.ALL)
                .allSatisfy(rule -> assertThat(explain("--rule", rule.id()).out())
                        .contains("Rule " + rule.id(), "Allowed: ", "Likely cure: ", "It is kept."));
        assertThat(explain("--rule", "rating").out()).contains("Nearest to it", "P1");
    }

    @Test
    void refusesALoadThatIsNotThereAndNamesWhatIsLikeIt() {
        Shell.Result result = explain("SUB");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("the project has no load 'SUB'. Maybe it is 'amp'.");
    }

    @Test
    void refusesARuleThatIsNotThereAndListsThem() {
        Shell.Result result = explain("--rule", "beauty");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no rule is called 'beauty'", "processing-first");
    }

    @Test
    void asksOneQuestionAtATime() {
        assertThat(explain().code()).isEqualTo(ExitCode.USAGE);
        assertThat(explain("amp", "--peak").code()).isEqualTo(ExitCode.USAGE);
        assertThat(explain("--peak", "--json").code()).isEqualTo(ExitCode.USAGE);
    }
}
