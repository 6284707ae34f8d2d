package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.check.Severity;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.TakenDefault;
import evenrise.model.project.TripCurve;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Two amplifiers, of which the first is of group stage; a processor that settles in 5 s; a light. */
class LoadDefaultsTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static String project(String... entries) {
        return Samples.PROJECT.replace(
                "\"loads\": [", "\"defaults\": [" + String.join(", ", entries) + "],\n  \"loads\": [");
    }

    private static Project read(String... entries) {
        Reading<Project> reading = Samples.read(project(entries));
        assertThat(reading.problems()).isEmpty();
        return reading.value().orElseThrow();
    }

    private static Load load(Project project, String id) {
        return project.loads().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Problem onlyProblem(String... entries) {
        return Samples.onlyProblem(Samples.read(project(entries)));
    }

    @Nested
    class Read {
        @Test
        void giveWhatALoadDoesNotState() {
            Project project =
                    read("{\"role\": \"amplifier\", \"gives\": {\"curve\": \"C\", \"panels\": [\"P2\", \"P1\"]}}");

            assertThat(load(project, "amp-1").curve()).contains(TripCurve.C);
            assertThat(load(project, "amp-2").panels()).containsExactly("P2", "P1");
            assertThat(load(project, "dsp").curve()).isEmpty();
        }

        @Test
        void leaveWhatALoadStatesItself() {
            Project project = read("{\"gives\": {\"settle_s\": 9, \"breaker_a\": 32}}");

            assertThat(load(project, "dsp").settleSeconds()).isEqualTo(5);
            assertThat(load(project, "light").settleSeconds()).isEqualTo(9);
            assertThat(load(project, "light").breakerAmps()).isEqualTo(16);
        }

        @Test
        void giveEvenWhatMustBeThere() {
            String text = project("{\"gives\": {\"breaker_a\": 32}}").replace("\"breaker_a\": 16, ", "");

            assertThat(Samples.read(text).value().orElseThrow().loads())
                    .extracting(Load::breakerAmps)
                    .containsExactly(32.0, 20.0, 20.0, 32.0);
        }

        @Test
        void countByTheLastEntryThatGivesAFieldFieldByField() {
            Project project = read(
                    "{\"role\": \"amplifier\", \"gives\": {\"power_factor\": 0.9, \"off_after_s\": 0, \"circuit\": {\"devices\": 2}}}",
                    "{\"gives\": {\"power_factor\": 0.8, \"circuit\": {\"fully_rated\": true}}}");

            assertThat(load(project, "amp-1").powerFactor()).isEqualTo(0.8);
            assertThat(load(project, "amp-1").circuit().orElseThrow().devices()).isEqualTo(2);
            assertThat(load(project, "amp-1").circuit().orElseThrow().fullyRated())
                    .isTrue();
            assertThat(load(project, "dsp").circuit().orElseThrow().devices()).isEqualTo(1);
        }

        @Test
        void fillAnObjectThatALoadStatesInPart() {
            String text = project("{\"gives\": {\"circuit\": {\"cable\": {\"size\": \"12 AWG\", \"length_m\": 9}}}}")
                    .replace(
                            "\"running_a\": 1,",
                            "\"running_a\": 1, \"circuit\": {\"cable\": {\"length_m\": 30}, \"devices\": 3},");

            Load light = load(Samples.read(text).value().orElseThrow(), "light");

            assertThat(light.circuit().orElseThrow().cable().orElseThrow().size())
                    .isEqualTo("12 AWG");
            assertThat(light.circuit().orElseThrow().cable().orElseThrow().lengthMetres())
                    .isEqualTo(30);
            assertThat(light.circuit().orElseThrow().devices()).isEqualTo(3);
        }

        @Test
        void leaveOutAnObjectThatTheyDoNotMakeWholeAndSaySo() {
            Reading<Project> read =
                    Samples.read(project("{\"gives\": {\"circuit\": {\"cable\": {\"size\": \"12 AWG\"}}}}"));

            assertThat(load(read.value().orElseThrow(), "dsp").circuit()).isEmpty();
            assertThat(read.taken()).singleElement().satisfies(each -> {
                assertThat(each.takenBy()).isEmpty();
                assertThat(each.incompleteFor()).contains("dsp", "amp-1", "amp-2", "light");
            });
        }

        @Test
        void fitByEverythingThatIsStated() {
            String text = project(
                            "{\"room\": \"Loft\", \"kind\": \"par\", \"rack\": \"R1\", \"gives\": {\"settle_s\": 1}}",
                            "{\"group\": \"stage\", \"gives\": {\"settle_s\": 2}}",
                            "{\"loads\": [\"amp-2\"], \"gives\": {\"settle_s\": 3}}")
                    .replace(
                            "\"id\": \"light\",",
                            "\"id\": \"light\", \"kind\": \"par\", \"rack\": \"R1\", \"equipment\": {\"room\": \"Loft\"},");

            assertThat(Samples.read(text).value().orElseThrow().loads())
                    .extracting(Load::settleSeconds)
                    .containsExactly(5.0, 2.0, 3.0, 1.0);
        }

        @Test
        void reachALoadBehindTheContactorOfAnotherByThatOnesGroup() {
            String text = project("{\"group\": \"stage\", \"gives\": {\"settle_s\": 2}}")
                    .replace(
                            "\"shutdown_group\": \"stage\"",
                            "\"shutdown_group\": \"stage\", \"switched_by\": \"contactor\"")
                    .replace("\"comes_after\": [\"amp-1\"]", "\"comes_with\": \"amp-1\"");

            assertThat(load(Samples.read(text).value().orElseThrow(), "amp-2").settleSeconds())
                    .isEqualTo(2);
        }

        @Test
        void tellWhoTookWhatFromWhere() {
            Reading<Project> read = Samples.read(project(
                    "{\"gives\": {\"settle_s\": 9}}", "{\"role\": \"amplifier\", \"gives\": {\"settle_s\": 3}}"));

            assertThat(read.taken())
                    .containsExactly(
                            new TakenDefault(
                                    1,
                                    "all loads",
                                    "settle_s",
                                    "9",
                                    List.of("light"),
                                    List.of("dsp"),
                                    List.of("amp-1", "amp-2"),
                                    List.of()),
                            new TakenDefault(
                                    2,
                                    "role amplifier",
                                    "settle_s",
                                    "3",
                                    List.of("amp-1", "amp-2"),
                                    List.of(),
                                    List.of(),
                                    List.of()));
        }
    }

    @Nested
    class Wrong {
        @Test
        void isSaidOnceWhereItStandsWithWhoTookIt() {
            Problem problem = onlyProblem("{\"role\": \"amplifier\", \"gives\": {\"panels\": [\"P9\"]}}");

            assertThat(problem.pointer()).isEqualTo("/defaults/0/gives/panels/0");
            assertThat(problem.line()).isEqualTo(15);
            assertThat(problem.message())
                    .contains(
                            "gives.panels[0] of default number 1 is 'P9' (taken by load 'amp-1', load 'amp-2'), expected"
                                    + " the id of one of the panels. Maybe 'P1'.");
        }

        @Test
        void isSaidOfAnEntryThatNoLoadTakes() {
            assertThat(onlyProblem("{\"loads\": [], \"gives\": {\"panels\": [\"P9\"]}}")
                            .pointer())
                    .isEqualTo("/defaults/0/gives/panels/0");
        }

        @Test
        void isSaidOnceOfAValueOutOfRange() {
            Problem problem = onlyProblem("{\"gives\": {\"power_factor\": 1.2}}");

            assertThat(problem.pointer()).isEqualTo("/defaults/0/gives/power_factor");
            assertThat(problem.message()).contains("taken by", "and 1 more", "at most 1");
        }

        @ParameterizedTest
        @ValueSource(strings = {"running_a", "id", "role", "fixed", "comes_after", "shutdown_group"})
        void isWhatEachLoadStatesForItself(String key) {
            Problem problem = onlyProblem("{\"gives\": {\"" + key + "\": 1}}");

            assertThat(problem.message()).contains("a field that each load states for itself", "power_factor");
        }

        @Test
        void isASlipInAFieldWithTheNearestOne() {
            assertThat(onlyProblem("{\"gives\": {\"setle_s\": 1}}").cure()).isEqualTo("Maybe 'settle_s'.");
            assertThat(onlyProblem("{\"gives\": {\"circuit\": {\"device\": 1}}}")
                            .cure())
                    .isEqualTo("Maybe 'devices'.");
        }

        @Test
        void isAGroupThatIsNotThere() {
            assertThat(onlyProblem("{\"group\": \"stagee\", \"gives\": {}}").message())
                    .contains("/defaults/0/group", "Maybe 'stage'.");
        }

        @Test
        void isRemarkedOfARoomThatNoLoadIsIn() {
            Reading<Project> read = Samples.read(project("{\"room\": \"Loft\", \"gives\": {\"settle_s\": 1}}"));

            assertThat(read.value()).isPresent();
            assertThat(read.problems()).singleElement().satisfies(problem -> {
                assertThat(problem.severity()).isEqualTo(Severity.REMARK);
                assertThat(problem.message()).contains("/defaults/0/room", "no load has it");
            });
        }
    }

    @Nested
    class Written {
        private static final String ENTRY =
                "{\"role\": \"amplifier\", \"gives\": {\"curve\": \"C\", \"circuit\": {\"devices\": 2, \"x-a\": 1}}, \"notes\": \"n\"}";

        private JsonNode written(Reading<Project> read, Project project, SideNotes notes) throws Exception {
            java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
            ProjectFile.write(project, notes, out, Format.JSON);
            return JSON.readTree(out.toByteArray());
        }

        @Test
        void leaveLoadsAsTheyWereAndTheDefaultsToo() throws Exception {
            Reading<Project> read = Samples.read(project(ENTRY));

            JsonNode written = written(read, read.value().orElseThrow(), read.notes());

            assertThat(written.path("defaults")).isEqualTo(JSON.readTree("[" + ENTRY + "]"));
            assertThat(written.path("loads"))
                    .isEqualTo(JSON.readTree(Samples.PROJECT).path("loads"));
        }

        @Test
        void sayWhatHasChangedAndNothingElse() throws Exception {
            Reading<Project> read = Samples.read(project(ENTRY));
            Project project = read.value().orElseThrow();
            List<Load> loads = project.loads().stream()
                    .map(load -> load.id().equals("amp-1") ? load.withSettleSeconds(7) : load)
                    .toList();

            JsonNode written = written(read, project.withLoads(loads), read.notes());

            assertThat(written.at("/loads/1"))
                    .isEqualTo(JSON.readTree("{\"id\": \"amp-1\", \"role\": \"amplifier\", \"breaker_a\": 20,"
                            + " \"running_a\": 8, \"settle_s\": 7, \"shutdown_group\": \"stage\"}"));
        }

        @Test
        void sayALoadInFullWhereLeavingOutWouldMeanSomethingElse() throws Exception {
            Reading<Project> read = Samples.read(project(ENTRY));
            Project project = read.value().orElseThrow();
            List<Load> loads = project.loads().stream()
                    .map(load -> load.withRunningAmps(4)) // idle_a, left out, was that of running_a and stays
                    .toList();

            JsonNode written = written(read, project.withLoads(loads), read.notes());

            assertThat(written.at("/loads/0/idle_a").asDouble()).isEqualTo(2);
            assertThat(Samples.read(written.toString()).value().orElseThrow().loads())
                    .isEqualTo(loads);
        }

        @Test
        void areAppliedInAProjectThatSaysEverything() throws Exception {
            Reading<Project> read = Samples.read(project(ENTRY));
            Project resolved = read.value().orElseThrow().withDefaults(List.of());

            JsonNode written = written(read, resolved, read.notes().inFull());

            assertThat(written.has("defaults")).isFalse();
            assertThat(written.at("/loads/1/curve").asText()).isEqualTo("C");
            assertThat(Samples.read(written.toString()).value().orElseThrow().loads())
                    .isEqualTo(resolved.loads());
        }

        @ParameterizedTest
        @EnumSource(Format.class)
        void areReadBackAsTheyWere(Format format) throws IOException {
            Reading<Project> read = Samples.read(project(ENTRY));

            String text = FileText.of(read.value().orElseThrow(), read.notes(), format);
            Reading<Project> again = ProjectFile.read(
                    text.getBytes(StandardCharsets.UTF_8), format == Format.JSON ? "a.json" : "a.yaml");

            assertThat(again.problems()).isEmpty();
            assertThat(again.value().orElseThrow().loads())
                    .isEqualTo(read.value().orElseThrow().loads());
            assertThat(again.value().orElseThrow().defaults())
                    .isEqualTo(read.value().orElseThrow().defaults());
        }
    }
}
