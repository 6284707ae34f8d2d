package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Plants;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RehearseCommandTest {
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

    private Shell.Result rehearse(String... more) {
        String[] arguments = new String[more.length + 3];
        arguments[0] = "rehearse";
        arguments[1] = project.toString();
        arguments[2] = plan.toString();
        System.arraycopy(more, 0, arguments, 3, more.length);
        return new Shell(SmallHall.sound()).run(arguments);
    }

    @Test
    void playsAnOrdinaryDayUnlessToldOtherwise() {
        Shell.Result result = rehearse();

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains("Rehearsal of an ordinary day", "on command", "mains fail", "emergency begins", "off command")
                .contains(
                        "Nothing happened that must not, in what was played.",
                        "Timeline",
                        "Findings",
                        "Isolate and lock out");
        assertThat(result.err()).isEmpty();
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void showsThePeakOfWhatComesOn() {
        // amp comes on at 0.75 s with 100 A, on a phase by itself
        assertThat(rehearse("-e", "0:on").out()).containsPattern("on command +1 +0 +1 +up +100\\.0 +0\\.75 B +100\\.0");
    }

    /** Of the two halls the transformer T-1 states a limit, no panel does. */
    @Test
    void namesDistributionPointsBesidePanelsWhereTheyHaveLimits() throws IOException, WriteFailed {
        Files.copy(Plants.twoHalls(), project, StandardCopyOption.REPLACE_EXISTING);
        Plan halls = DrawnPages.of(Plants.read(project), 300).layout().plan();
        PlanFile.write(halls, plan, Format.JSON);

        assertThat(rehearse("-e", "0:on").out())
                .contains("Panels and distribution points nearest to their inrush limit")
                .containsPattern("T-1 +[0-9.]+ +1200\\.0");
    }

    @Test
    void drawsTrialsThatTheSeedRepeats() throws IOException {
        Path first = folder.resolve("first.json");
        Path second = folder.resolve("second.json");

        Shell.Result result = rehearse("--trials", "500", "--seed", "3", "--threads", "2", "--trace", first.toString());
        rehearse("--trials", "500", "--seed", "3", "--threads", "1", "--trace", second.toString());

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains("Scatter of 500 switch-ons", "P99", "needs electrical.source", "Isolate and lock out");
        assertThat(Files.readString(first)).isEqualTo(Files.readString(second)).contains("evenrise-scatter/1");
    }

    @Test
    void refusesTrialsOfEvents() {
        assertThat(rehearse("--trials", "5", "-e", "on").code()).isEqualTo(ExitCode.USAGE);
        assertThat(rehearse("--trials", "0").err()).contains("at least 1");
    }

    @Test
    void playsAScript() throws IOException {
        Path script = Files.writeString(folder.resolve("day.yaml"), """
            format: evenrise-script/1
            name: a board that dies
            events:
              - {at_s: 0, event: system-on}
              - {event: board-dead, board: B1}
              - {event: mains, voltage_pct: 0}
              - {event: mains, voltage_pct: 100}
            """);

        Shell.Result result = rehearse("--script", script.toString());

        assertThat(result.out())
                .contains("Rehearsal of a board that dies", "BROKEN, return", "its board is dead: it stays closed");
    }

    @Test
    void saysThatThePlanBreaksRulesAndPlaysItAllTheSame() throws IOException {
        Files.writeString(plan, Files.readString(plan).replace("\"slot\": 3", "\"slot\": 5"));

        Shell.Result result = rehearse();

        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
        assertThat(result.err()).contains("the plan breaks limits; evenrise audit shows them");
        assertThat(result.out()).contains("Timeline");
    }

    @Nested
    class Trace {
        @Test
        void isWrittenAsJson() throws IOException {
            Path trace = folder.resolve("trace.json");

            rehearse("--trace", trace.toString());

            assertThat(Files.readString(trace))
                    .startsWith("{\n  \"format\": \"evenrise-rehearsal/1\"")
                    .contains("\"kind\": \"closes\"", "\"bound_a\": 100.0", "\"shown\": \"waiting\"");
        }

        @Test
        void isWrittenAsCsvWhereItsNameEndsSo() throws IOException {
            Path trace = folder.resolve("trace.csv");

            rehearse("-e", "0:on", "--trace", trace.toString());

            assertThat(Files.readAllLines(trace))
                    .contains("record,at_s,kind,load,text,loads_on,shown,locked,node,phase,drawn_a,bound_a")
                    .contains("step,0.75,closes,amp,,1,up,false,,,,")
                    .contains("reading,0.75,,,,,,,supply,B,100.0,100.0");
        }

        @Test
        void leavesThePlanThatItIsMadeFrom() {
            Shell.Result result = rehearse("--trace", plan.toString());

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(rehearse().code()).isEqualTo(ExitCode.DONE);
        }

        @Test
        void thatCannotBeWrittenIsAFailure() {
            Shell.Result result =
                    rehearse("--trace", folder.resolve("none/trace.csv").toString());

            assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(result.err()).contains("the folder does not exist");
        }
    }

    @Nested
    class Words {
        @Test
        void thatAreNotKnownAreListedWithThoseThatAre() {
            Shell.Result result = rehearse("-e", "onn", "-e", "5:mains=0@D");

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err())
                    .contains(
                            "'onn' is not understood",
                            "group-off, lock",
                            "'D' is no phase, panel or node, expected A, B, C or a name");
        }

        @Test
        void thatReferToNothingNameTheNearest() {
            Shell.Result result = rehearse("-e", "board-dead@B2");

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err()).contains("board is 'B2', expected the id of one of the boards", "B1");
        }

        @Test
        void thatGoBackInTimeAreRefused() {
            assertThat(rehearse("-e", "5:on", "-e", "3:off").err()).contains("at_s is 3, expected at least 5");
        }

        @Test
        void excludeAScript() {
            assertThat(rehearse("-e", "on", "--script", "day.json").code()).isEqualTo(ExitCode.USAGE);
        }
    }
}
