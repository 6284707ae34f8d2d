package evenrise.model.file;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class FileTextTest {
    @Test
    void givesEachAssignmentALineAndWritesNullWhereNothingSwitchesIt() {
        Plan plan = aPlan().board("B1", 2, 0.5)
                .assignments(
                        anAssignment("amp")
                                .at("P1", 3, Phase.B)
                                .on("B1", 1)
                                .onSeconds(2)
                                .offSeconds(0.25),
                        anAssignment("light"))
                .build();

        assertThat(FileText.of(plan, Format.JSON)).isEqualTo("""
                        {
                          "format": "evenrise-plan/1",
                          "cautions": [],
                          "boards": [
                            {"id": "B1", "start_delay_s": 2, "step_s": 0.5}
                          ],
                          "assignments": [
                            {"load": "amp", "panel": "P1", "slot": 3, "phases": ["B"], "board": "B1", "output": 1, "on_s": 2, "off_s": 0.25},
                            {"load": "light", "panel": "P1", "slot": 1, "phases": ["A"], "board": null, "output": null, "on_s": null, "off_s": null}
                          ],
                          "violations": [],
                          "optimal": false
                        }
                        """);
    }

    @Test
    void writesYamlInTheSameOrder() {
        Plan plan =
                aPlan().board("no", 2, 0.5).assignments(anAssignment("light")).build();

        assertThat(FileText.of(plan, Format.YAML)).isEqualTo("""
                        format: evenrise-plan/1
                        cautions: []
                        boards:
                          - {id: "no", start_delay_s: 2, step_s: 0.5}
                        assignments:
                          - {load: light, panel: P1, slot: 1, phases: [A], board: null, output: null, on_s: null, off_s: null}
                        violations: []
                        optimal: false
                        """);
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void keepsTheTextsThatTheFormatsTakeForSomethingElse(Format format) {
        for (String text : new String[] {
            "yes", "NO", "null", "~", "1e3", "0x1F", "12:30", "2026-01-01", "a: b", "#x", "- x", "[x", "{x", "&a", "*a",
                    "!t",
            "|", ">", "%x", "@x", "`x", "'", "\"", "\\", " x", "x ", "a\nb", "a\tb", "a\u0085b", "a\u2028b", "\uFEFFx",
                    "𝄞",
            "\ud800", "\udc00x", "\u001b[2J", "a #b", "a:b", "…", "<<", "=", ".inf", "é", "x\u0000"
        }) {
            Project project = aProject()
                    .name(text + "x")
                    .loads(aLoad("L" + text).name(text + ".").unswitched())
                    .build();
            byte[] written = FileText.of(project, format).getBytes(StandardCharsets.UTF_8);

            Reading<Project> back =
                    ProjectFile.read(written, "x." + format.name().toLowerCase(java.util.Locale.ROOT));

            assertThat(back.problems()).as(text).isEmpty();
            assertThat(back.value()).as(text).contains(project);
        }
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {
                0,
                -0.0,
                1,
                0.1,
                1.0 / 3,
                100,
                1e14,
                123456789012345.0,
                1e15,
                1e22,
                1e23,
                2e-3,
                1e-6,
                9.999e-7,
                1e-300,
                4.9e-324,
                1.7976931348623157e308,
                0.30000000000000004,
                2.2250738585072014e-308,
                -17.25
            })
    void keepsEveryNumberToTheLastBit(double number) {
        String text = ShortestNumber.of(number);

        assertThat(Double.doubleToLongBits(Double.parseDouble(text))).isEqualTo(Double.doubleToLongBits(number));
        assertThat(text.length()).isLessThanOrEqualTo(24);
    }

    @Test
    void writesNumbersInTheirShortestForm() {
        assertThat(ShortestNumber.of(20)).isEqualTo("20");
        assertThat(ShortestNumber.of(0.1)).isEqualTo("0.1");
        assertThat(ShortestNumber.of(0.002)).isEqualTo("0.002");
        assertThat(ShortestNumber.of(2e23)).isEqualTo("2.0e+23");
        assertThat(ShortestNumber.of(-1.5e-9)).isEqualTo("-1.5e-9");
    }

    @Test
    void leavesOutWhatIsAbsent() {
        Project project =
                aProject().boards(aBoard()).loads(aLoad("amp").name("Amp")).build();

        assertThat(FileText.of(project, Format.JSON))
                .doesNotContain("null")
                .doesNotContain("shutdown_group\"")
                .doesNotContain("fixed")
                .doesNotContain("switched_slots")
                .doesNotContain("max_duration_s");
    }
}
