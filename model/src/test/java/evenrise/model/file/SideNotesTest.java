package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.check.Severity;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SideNotesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String NOTED = Samples.PROJECT
            .replace("\"name\": \"Hall\"", "\"$schema\": \"project.schema.json\", \"name\": \"Hall\", \"x-rev\": 7")
            .replace("\"rated_a\": 400", "\"rated_a\": 400, \"notes\": [\"fed from room 2\", 1.5, true, null]")
            .replace(
                    "\"id\": \"P1\", \"slots\"",
                    "\"id\": \"P1\", \"x-door\": {\"key\": \"blue\", \"n\": [1]}, \"slots\"")
            .replace(
                    "\"settle_s\": 5",
                    "\"settle_s\": 5, \"notes\": \"ask \\\"Ann\\\"\", \"fixed\": {\"notes\": \"wall\"}");

    private static JsonNode written(Project project, SideNotes notes) throws IOException {
        return JSON.readTree(FileText.of(project, notes, Format.JSON));
    }

    @Nested
    class Read {
        @Test
        void areNoProblemInAnyObject() {
            assertThat(Samples.read(NOTED).problems()).isEmpty();
        }

        @Test
        void changeNothingThatTheFileMeans() {
            assertThat(Samples.read(NOTED).value())
                    .isEqualTo(Samples.read(Samples.PROJECT).value())
                    .isPresent();
        }

        @ParameterizedTest
        @ValueSource(strings = {"note", "Notes", "x-", "x_rev", "X-rev", "schema", "ax-b"})
        void leaveEveryOtherKeyAnError(String key) {
            Problem problem = Samples.onlyProblemWith("\"settle_s\": 5", "\"settle_s\": 5, \"" + key + "\": 1");

            assertThat(problem.message()).contains("is an unknown field");
        }

        @Test
        void areWhatJsonCanSay() {
            Problem problem = Samples.onlyProblemWith("\"settle_s\": 5", "\"settle_s\": 5, \"x-n\": {\"a\": [NaN]}");

            assertThat(problem.pointer()).isEqualTo("/loads/0/x-n/a/0");
        }

        @Test
        void keepTheHeaderOfTheColumnOfNotes(@TempDir Path folder) throws IOException {
            Reading<Mapping> mapping = MappingFile.read(
                    Files.writeString(
                            folder.resolve("map.json"),
                            "{\"format\": \"evenrise-mapping/1\", \"notes\": \"of the hall\", \"columns\": {\"notes\": \"Remarks\"}}"));

            assertThat(mapping.value().orElseThrow().columns().orElseThrow().notes())
                    .contains("Remarks");
            assertThat(mapping.notes().places()).containsExactly("the file itself");
        }
    }

    @Nested
    class Written {
        @Test
        void standWhereTheyStood() throws IOException {
            Reading<Project> read = Samples.read(NOTED);

            JsonNode written = written(read.value().orElseThrow(), read.notes());

            assertThat(written.path("$schema").asText()).isEqualTo("project.schema.json");
            assertThat(written.fieldNames().next()).isEqualTo("$schema");
            assertThat(written.path("x-rev")).isEqualTo(JSON.readTree("7"));
            assertThat(written.at("/supply/notes")).isEqualTo(JSON.readTree("[\"fed from room 2\", 1.5, true, null]"));
            assertThat(written.at("/panels/0/x-door")).isEqualTo(JSON.readTree("{\"key\": \"blue\", \"n\": [1]}"));
            assertThat(written.at("/loads/0/notes").asText()).isEqualTo("ask \"Ann\"");
            assertThat(written.at("/loads/0/fixed/notes").asText()).isEqualTo("wall");
            assertThat(written.at("/loads/1").has("notes")).isFalse();
        }

        @ParameterizedTest
        @EnumSource(Format.class)
        void areReadBackAndWrittenTheSame(Format format) {
            Reading<Project> read = Samples.read(NOTED);
            String once = FileText.of(read.value().orElseThrow(), read.notes(), format);

            Reading<Project> again = ProjectFile.read(
                    once.getBytes(StandardCharsets.UTF_8), format == Format.JSON ? "a.json" : "a.yaml");

            assertThat(again.problems()).isEmpty();
            assertThat(again.value()).isEqualTo(read.value());
            assertThat(FileText.of(again.value().orElseThrow(), again.notes(), format))
                    .isEqualTo(once);
            assertThat(again.notes().places())
                    .containsExactlyInAnyOrderElementsOf(read.notes().places());
        }

        @Test
        void followTheirLoadToItsNewLine() throws IOException {
            Reading<Project> read = Samples.read(NOTED);
            Project project = read.value().orElseThrow();
            List<Load> loads = new ArrayList<>(project.loads());
            Collections.reverse(loads);

            JsonNode written = written(project.withLoads(loads), read.notes());

            assertThat(written.at("/loads/3/id").asText()).isEqualTo("dsp");
            assertThat(written.at("/loads/3/notes").asText()).isEqualTo("ask \"Ann\"");
            assertThat(written.at("/loads/0").has("notes")).isFalse();
        }

        @Test
        void goWithTheirLoadAndThatCanBeSaid() throws IOException {
            Reading<Project> read = Samples.read(NOTED);
            Project project = read.value().orElseThrow();
            Project less = project.withLoads(project.loads().subList(1, 4));

            assertThat(read.notes().withoutPlaceIn(project)).isEmpty();
            assertThat(read.notes().withoutPlaceIn(less)).containsExactly("loads 'dsp'", "loads 'dsp' fixed");
            assertThat(written(less, read.notes()).toString()).doesNotContain("Ann");
        }
    }

    @Nested
    class OfANewerVersion {
        private static final String NEWER = NOTED.replace("evenrise-project/1", "evenrise-project/1.3")
                .replace("\"settle_s\": 5", "\"settle_s\": 5, \"aux_a\": 3");

        @Test
        void areRemarksThatNameTheFieldOnce() {
            Reading<Project> read = Samples.read(NEWER.replace("\"running_a\": 8", "\"running_a\": 8, \"aux_a\": 1"));

            assertThat(read.value()).isPresent();
            assertThat(read.problems()).hasSize(1);
            assertThat(read.problems().get(0).severity()).isEqualTo(Severity.REMARK);
            assertThat(read.problems().get(0).message())
                    .contains("/loads/0/aux_a", "of a newer version", "left out of account");
        }

        @Test
        void hintAtASlip() {
            Reading<Project> read = Samples.read(NEWER.replace("\"aux_a\"", "\"setle_s\""));

            assertThat(read.problems().get(0).message()).contains("settle_s");
        }

        @Test
        void areKeptWithTheVersionThatKnowsThem() throws IOException {
            Reading<Project> read = Samples.read(NEWER);

            JsonNode written = written(read.value().orElseThrow(), read.notes());

            assertThat(written.path("format").asText()).isEqualTo("evenrise-project/1.3");
            assertThat(written.at("/loads/0/aux_a").asInt()).isEqualTo(3);
            assertThat(written(read.value().orElseThrow(), read.notes().free())
                            .at("/loads/0/notes")
                            .asText())
                    .isEqualTo("ask \"Ann\"");
            assertThat(written(read.value().orElseThrow(), read.notes().free()).toString())
                    .doesNotContain("aux_a");
        }

        @Test
        void areErrorsInAFileOfOurOwnVersion() {
            assertThat(Samples.read(NEWER.replace("/1.3", "/1.0")).value()).isEmpty();
            assertThat(Samples.read(NEWER.replace("/1.3", "/1")).value()).isEmpty();
        }

        /** Another word for a known field is no addition: nobody can leave it out of account. */
        @Test
        void excuseNoWrongValue() {
            assertThat(Samples.read(NEWER.replace("\"processing\"", "\"dimmer\""))
                            .value())
                    .isEmpty();
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "evenrise-project/2",
                    "evenrise-project/2.1",
                    "evenrise-project/0",
                    "evenrise-project/1.",
                    "evenrise-project/1.01",
                    "evenrise-project/1.x",
                    "evenrise-project/1.3.1",
                    "evenrise-project/99999"
                })
        void leaveEveryOtherVersionAnError(String format) {
            assertThat(Samples.with("evenrise-project/1", format).value()).isEmpty();
        }
    }
}
