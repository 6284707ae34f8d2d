package evenrise.model.file;

import static evenrise.model.file.Samples.PROJECT;
import static evenrise.model.file.Samples.onlyProblemWith;
import static evenrise.model.file.Samples.read;
import static evenrise.model.file.Samples.readYaml;
import static evenrise.model.file.Samples.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.check.Severity;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.SlotNumbering;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProjectFileTest {
    @Nested
    class Defaults {
        private final Project project = read(PROJECT).value().orElseThrow();

        @Test
        void standInForWhatTheFileLeavesOut() {
            Load dsp = project.loads().get(0);

            assertThat(project.supply().continuousFraction()).isEqualTo(0.8);
            assertThat(project.supply().neutralFactor()).isEqualTo(1);
            assertThat(project.supply().inrushLimitAmps()).isEmpty();
            assertThat(project.timingToleranceSeconds()).isZero();
            assertThat(project.maxDurationSeconds()).isEmpty();
            assertThat(project.objective()).isEqualTo(ObjectiveWeights.DEFAULT);
            assertThat(project.panels().get(0).numbering()).isEqualTo(SlotNumbering.ALTERNATING);
            assertThat(project.panels().get(0).switchedSlots()).isEmpty();
            assertThat(project.boards().get(0).reaches()).containsExactly("P1");
            assertThat(project.boards().get(0).after()).isEmpty();
            assertThat(dsp.name()).isEqualTo("dsp");
            assertThat(dsp.poles()).isEqualTo(1);
            assertThat(dsp.switched()).isTrue();
            assertThat(dsp.idleAmps()).isEqualTo(2);
            assertThat(dsp.inrushPeakAmps()).isEmpty();
            assertThat(dsp.inrushAmps()).isEqualTo(2 * Math.sqrt(2));
            assertThat(dsp.thirdHarmonic()).isEmpty();
            assertThat(dsp.harmonicRatio()).isZero();
            assertThat(dsp.statesWaveform()).isFalse();
            assertThat(dsp.inrushHalfMillis()).isEqualTo(10);
            assertThat(dsp.powerFactor()).isEqualTo(1);
            assertThat(dsp.comesAfter()).isEmpty();
        }

        @Test
        void standInForTheWeightsThatAnObjectiveLeavesOut() {
            Reading<Project> reading =
                    with("\"name\": \"Hall\",", "\"name\": \"Hall\", \"objective\": {\"boards\": 3},");

            assertThat(reading.value().orElseThrow().objective())
                    .isEqualTo(ObjectiveWeights.builder()
                            .peakInrush(1)
                            .supplyImbalance(1)
                            .panelImbalance(1)
                            .duration(0.1)
                            .boards(3)
                            .build());
        }
    }

    @Nested
    class Builders {
        @Test
        void beginWithWhatAFileLeavesOut() {
            Load asRead = read(PROJECT).value().orElseThrow().loads().get(0);

            Load built = Load.builder()
                    .id(asRead.id())
                    .role(asRead.role())
                    .breakerAmps(asRead.breakerAmps())
                    .runningAmps(asRead.runningAmps())
                    .settleSeconds(5)
                    .build();

            assertThat(built).isEqualTo(asRead);
        }

        @Test
        void refuseAFigureThatNobodyGave() {
            assertThatThrownBy(() -> Load.builder()
                            .id("dsp")
                            .role(Role.PROCESSING)
                            .breakerAmps(20)
                            .build())
                    .hasMessageContaining("running_a is NaN, expected a finite number");
        }
    }

    @Nested
    class Yaml {
        @Test
        void saysTheSameAsJson() {
            String yaml = """
                # the hall
                format: evenrise-project/1
                name: Hall
                supply: {system: three-phase, line_to_neutral_v: 120, frequency_hz: 60, rated_a: 400}
                panels:
                  - {id: P1, slots: 12, rated_a: 225}
                  - id: P2
                    slots: 12
                    rated_a: 225
                board_types:
                  - {id: eight, outputs: 8, start_delay_s: [0, 1], step_s: [0.5]}
                boards:
                  - {id: B1, type: eight, panel: P1, after: null}
                  - {id: B2, type: eight, panel: P2, after: B1}
                shutdown_groups:
                  - {id: stage, on_emergency: drop}
                loads:
                  - {id: dsp, role: processing, breaker_a: 16, running_a: 2, settle_s: 5}
                  - {id: amp-1, role: amplifier, breaker_a: 20, running_a: 8, shutdown_group: stage}
                  - {id: amp-2, role: amplifier, breaker_a: 20, running_a: 8, comes_after: [amp-1]}
                  - {id: light, role: auxiliary, breaker_a: 16, running_a: 1, switched: false}
                """;

            assertThat(readYaml(yaml).problems()).isEmpty();
            assertThat(readYaml(yaml).value()).isEqualTo(read(PROJECT).value());
        }

        @Test
        void placesAProblemInItsLine() {
            String yaml = "format: evenrise-project/1\nname: x\nsupply:\n  system: tree-phase\n";

            assertThat(readYaml(yaml).problems()).anySatisfy(problem -> {
                assertThat(problem.pointer()).isEqualTo("/supply/system");
                assertThat(problem.line()).isEqualTo(4);
                assertThat(problem.column()).isEqualTo(11);
            });
        }

        @Test
        void asksForQuotesAroundAnIdThatReadsAsANumber() {
            Reading<Project> reading = readYaml(PROJECT.replace("\"P1\"", "17"));

            assertThat(reading.problems()).anySatisfy(problem -> {
                assertThat(problem.pointer()).isEqualTo("/panels/0/id");
                assertThat(problem.value()).isEqualTo("17");
                assertThat(problem.cure()).contains("quotes");
            });
            assertThat(reading.problems())
                    .noneMatch(problem -> problem.message().contains("renamed or removed"));
        }

        @Test
        void isRecognizedOnStandardInput() {
            byte[] yaml = "# plant\nformat: evenrise-project/1\n".getBytes(StandardCharsets.UTF_8);

            Reading<Project> reading = ProjectFile.read(new ByteArrayInputStream(yaml), "-");

            assertThat(reading.problems())
                    .extracting(Problem::pointer)
                    .contains("/name", "/supply", "/panels", "/loads");
        }
    }

    @Nested
    class EachProblem {
        @Test
        void namesAnUnknownFieldAndTheNearestKnownOne() {
            Problem problem = onlyProblemWith("\"settle_s\": 5", "\"setle_s\": 5");

            assertThat(problem.pointer()).isEqualTo("/loads/0/setle_s");
            assertThat(problem.line()).isEqualTo(16);
            assertThat(problem.column()).isEqualTo(74);
            assertThat(problem.cure()).isEqualTo("Maybe 'settle_s'.");
            assertThat(problem.message())
                    .startsWith("line 16, column 74, /loads/0/setle_s: setle_s of load 'dsp' is an unknown field, "
                            + "expected one of: id, name, role,");
        }

        @Test
        void namesAMissingFieldAndHowItIsSpeltInstead() {
            List<Problem> problems = with("\"running_a\": 2", "\"runing_a\": 2").problems();

            assertThat(problems)
                    .extracting(Problem::pointer)
                    .containsExactly("/loads/0/running_a", "/loads/0/runing_a");
            assertThat(problems.get(0).value()).isEqualTo("missing");
            assertThat(problems.get(0).cure()).contains("'runing_a'");
            assertThat(problems.get(0).line()).isEqualTo(16);
        }

        @Test
        void namesAWrongTypeAndAsksForTheNumberAlone() {
            Problem problem = onlyProblemWith("\"running_a\": 2", "\"running_a\": \"2 A\"");

            assertThat(problem.value()).isEqualTo("'2 A'");
            assertThat(problem.expected()).isEqualTo("a number, at least 0, at most 6300");
            assertThat(problem.cure()).contains("the unit is in the key");
        }

        @Test
        void listsTheWordsOfAChoiceAndTheNearest() {
            Problem problem = onlyProblemWith("\"role\": \"processing\"", "\"role\": \"Procesing\"");

            assertThat(problem.expected()).isEqualTo("one of: processing, auxiliary, amplifier");
            assertThat(problem.cure()).isEqualTo("Maybe 'processing'.");
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "\"running_a\": 2|\"running_a\": -1|at least 0",
                    "\"running_a\": 2|\"running_a\": NaN|a finite number",
                    "\"running_a\": 2|\"running_a\": 1e999|a finite number",
                    "\"breaker_a\": 16, \"running_a\": 2|\"breaker_a\": 0, \"running_a\": 2|more than 0",
                    "\"settle_s\": 5|\"inrush_half_ms\": 0|more than 0",
                    "\"settle_s\": 5|\"poles\": 4|at most 3",
                    "\"settle_s\": 5|\"poles\": 1.5|a whole number, at least 1, at most 3",
                    "\"settle_s\": 5|\"poles\": 99999999999999999999|a whole number, at least 1, at most 3",
                    "\"settle_s\": 5|\"power_factor\": 1.01|at most 1",
                    "\"settle_s\": 5|\"id\": \" \"|it once (first in line 16)",
                    "\"id\": \"dsp\"|\"id\": \"  \"|at least 1 visible character",
                    "\"step_s\": [0.5]|\"step_s\": []|at least 1 entry",
                    "\"step_s\": [0.5]|\"step_s\": [0.5, 0.5]|no entry twice",
                    "\"step_s\": [0.5]|\"step_s\": 0.5|a list of numbers",
                    "\"step_s\": [0.5]|\"step_s\": [-0.5]|at least 0",
                    "\"switched\": false|\"switched\": \"no\"|true or false",
                    "\"type\": \"eight\", \"panel\": \"P1\"|\"type\": \"eight\", \"panel\": [\"P1\"]|a text",
                    "\"settle_s\": 5|\"settle_s\": null|a number, at least 0, at most 3600",
                })
        void namesWhatIsAllowed(String piece, String other, String expected) {
            assertThat(onlyProblemWith(piece, other).expected()).isEqualTo(expected);
        }

        @Test
        void tellsAPlanFromAProject() {
            Problem problem = onlyProblemWith("evenrise-project/1", "evenrise-plan/1");

            assertThat(problem.message()).contains("evenrise-plan/1").contains("evenrise-project/1");
        }

        @Test
        void refusesAnotherVersion() {
            assertThat(onlyProblemWith("evenrise-project/1", "evenrise-project/2")
                            .pointer())
                    .isEqualTo("/format");
        }

        @Test
        void escapesWhatCouldSteerATerminal() {
            Problem problem = onlyProblemWith("\"role\": \"processing\"", "\"role\": \"\\u001b[2Jx\\u202e\"");

            assertThat(problem.message()).contains("'\\u001B[2Jx\\u202E'").doesNotContain("\u001b");
        }
    }

    @Nested
    class OnePass {
        @Test
        void reportsEveryProblemByPlace() {
            String text = PROJECT.replace("\"slots\": 12, \"rated_a\": 225}", "\"slots\": 0, \"rated_a\": 225}")
                    .replace("\"panel\": \"P2\"", "\"panel\": \"P3\"")
                    .replace("\"comes_after\": [\"amp-1\"]", "\"comes_after\": [\"amp-2\", \"amp-9\"], \"polse\": 2")
                    .replace("\"running_a\": 1,", "");

            Reading<Project> reading = read(text);

            assertThat(reading.value()).isEmpty();
            assertThat(reading.problems())
                    .extracting(Problem::pointer)
                    .containsExactly(
                            "/panels/0/slots",
                            "/panels/1/slots",
                            "/boards/1/panel",
                            "/loads/2/comes_after/0",
                            "/loads/2/comes_after/1",
                            "/loads/2/polse",
                            "/loads/3/running_a");
        }

        @Test
        void doesNotBlameWhatRefersToAPartThatIsWrongItself() {
            Reading<Project> reading = with(
                    "{\"id\": \"P1\", \"slots\": 12, \"rated_a\": 225}",
                    "{\"id\": \"P1\", \"slots\": \"12\", \"reserved_slots\": [12]}");

            assertThat(reading.problems())
                    .extracting(Problem::pointer)
                    .containsExactlyInAnyOrder("/panels/0/slots", "/panels/0/rated_a");
        }

        @Test
        void doesNotBlameReferencesWhenAListIsMissing() {
            assertThat(with("\"panels\": [", "\"panel\": [").problems())
                    .extracting(Problem::pointer)
                    .containsExactly("/panels", "/panel");
        }

        @Test
        void reportsTheImpossibleBesideAnErrorThatDoesNotTouchIt() {
            Reading<Project> reading =
                    read(PROJECT.replace("\"id\": \"light\"", "\"id\": \"light\", \"panels\": [\"P1\"]")
                            .replace("\"running_a\": 1,", "\"running_a\": 500,")
                            .replace("\"settle_s\": 5", "\"setle_s\": 5"));

            assertThat(reading.problems()).extracting(Problem::severity).contains(Severity.ERROR, Severity.IMPOSSIBLE);
        }

        @Test
        void givesTheValueOfAWellFormedProjectThatNoPlanCanKeep() {
            Reading<Project> reading = with("\"running_a\": 1,", "\"running_a\": 500,");

            assertThat(reading.value()).isPresent();
            assertThat(reading.value()).isPresent();
            assertThat(reading.problems()).anyMatch(problem -> problem.severity() == Severity.IMPOSSIBLE);
        }

        @Test
        void stopsListingAtTheLimitAndCountsTheRest() {
            StringBuilder keys = new StringBuilder();
            for (int i = 0; i < Problems.MOST + 5; i++) {
                keys.append("\"field").append(i).append("\": 0, ");
            }

            List<Problem> problems = with("\"name\":", keys + "\"name\":").problems();

            assertThat(problems).hasSize(Problems.MOST + 1);
            assertThat(problems.get(Problems.MOST).message()).contains("wrong in 5 more places");
        }
    }

    @Test
    void carriesTheHashOfItsBytes() {
        // from memory: SHA-256 of no bytes, the test vector printed in many places
        String ofNothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

        assertThat(ProjectFile.read(new byte[0], "x.json").sha256()).isEqualTo(ofNothing);
        assertThat(read(PROJECT).sha256())
                .hasSize(64)
                .isNotEqualTo(read(PROJECT + " ").sha256());
    }

    @Test
    void toleratesAByteOrderMark() {
        assertThat(read("\uFEFF" + PROJECT).problems()).isEmpty();
        assertThat(readYaml("\uFEFF" + PROJECT).value()).isEqualTo(read(PROJECT).value());
    }

    @Test
    void takesAWholeNumberWithADecimalPoint() {
        assertThat(with("\"settle_s\": 5", "\"poles\": 1.0")
                        .value()
                        .map(p -> p.loads().get(0).poles()))
                .isEqualTo(Optional.of(1));
    }

    @Test
    void letsIdleExceedRunningAndInrushStayBelowItsBase() {
        assertThat(with("\"settle_s\": 5", "\"idle_a\": 9, \"inrush_peak_a\": 1")
                        .problems())
                .isEmpty();
    }
}
