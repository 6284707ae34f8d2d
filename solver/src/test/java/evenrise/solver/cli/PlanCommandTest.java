package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.solver.engine.Budget;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanCommandTest {
    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void writeTheProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
    }

    @Nested
    class WritesThePlan {
        @Test
        void besideTheProjectAndSaysSo() {
            Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString());

            assertThat(result.code()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).endsWith("Written: " + folder.resolve("hall.plan.json") + "\n");
            assertThat(read(folder.resolve("hall.plan.json")).assignments()).hasSize(2);
        }

        @Test
        void whereItIsTold() {
            Path elsewhere = folder.resolve("a.json");

            new Shell(SmallHall.sound()).run("plan", project.toString(), "-o", elsewhere.toString());

            assertThat(elsewhere).exists();
            assertThat(folder.resolve("hall.plan.json")).doesNotExist();
        }

        @Test
        void withFiguresCautionsAndOrigin() {
            new Shell(SmallHall.sound()).run("plan", project.toString(), "--moves", "1000", "--seed", "7");

            Plan plan = read(folder.resolve("hall.plan.json"));
            assertThat(plan.metrics().orElseThrow().hardViolations()).isZero();
            assertThat(plan.cautions()).isEqualTo(Cautions.ALL);
            assertThat(plan.madeBy()).hasValueSatisfying(made -> {
                assertThat(made.seed()).isEqualTo(7);
                assertThat(made.movesAllowed()).hasValue(1000);
                assertThat(made.timeUsedSeconds()).isEmpty();
                assertThat(made.projectSha256()).hasSize(64);
            });
        }

        @Test
        void nearAnEarlierOneWithWhatMovedInItsFigures() {
            Path earlier = folder.resolve("earlier.json");
            new Shell(SmallHall.sound()).run("plan", project.toString(), "-o", earlier.toString());

            Shell.Result result = new Shell(SmallHall.sound())
                    .run(
                            "plan",
                            project.toString(),
                            "--from",
                            earlier.toString(),
                            "--max-moves",
                            "0",
                            "--moves",
                            "200");

            assertThat(result.code()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).containsPattern("Breakers moved +0 ").containsPattern("Leads moved +0 ");
            assertThat(result.out())
                    .containsPattern("From the earlier plan: moved 0 of 2 loads, leads 0 of 1, settings \\d\\.");
        }

        @Test
        void fromAnEarlierOneAlwaysSaysHowMuchItMoves() {
            Path earlier = folder.resolve("earlier.json");
            new Shell(SmallHall.sound()).run("plan", project.toString(), "-o", earlier.toString());

            Shell.Result result =
                    new Shell(SmallHall.moved()).run("plan", project.toString(), "--from", earlier.toString());

            assertThat(result.out()).contains("From the earlier plan: moved 1 of 2 loads, leads 1 of 1, settings 1.");
        }

        @Test
        void namesWhatIsNewAndWhatIsGoneSinceAnEarlierOne() throws IOException {
            Path earlier = folder.resolve("earlier.json");
            new Shell(SmallHall.sound()).run("plan", project.toString(), "-o", earlier.toString());
            Files.writeString(earlier, Files.readString(earlier).replace("\"load\": \"amp\"", "\"load\": \"sub\""));

            Shell.Result result =
                    new Shell(SmallHall.sound()).run("plan", project.toString(), "--from", earlier.toString());

            assertThat(result.err())
                    .contains("1 load of this plan not in the project, and left out: 'sub'.")
                    .contains("1 load of the project new, without a place in this plan: 'amp'.");
        }

        @Test
        void refusesToEndEarlyWhereMovesAreCounted() {
            Shell.Result result =
                    new Shell(SmallHall.sound()).run("plan", project.toString(), "--moves", "300", "--gap", "2%");

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err()).contains("Say --time in the place of --moves");
        }

        @Test
        void endsWhereNothingBetterIsFoundAndSaysSo() {
            Shell.Result result = new Shell(SmallHall.sound())
                    .endless()
                    .run("plan", project.toString(), "--time", "5m", "--no-gain", "1ms");

            assertThat(result.code()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).contains("Ended before its time: nothing better was found for 0.001 s.");
        }

        @Test
        void asksForTheEarlierOneThatMovesAreCountedFrom() {
            Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString(), "--max-moves", "3");

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err()).contains("Say --from PLAN as well.");
            assertThat(new Shell(SmallHall.sound())
                            .run("plan", project.toString(), "--per-move", "-1")
                            .code())
                    .isEqualTo(ExitCode.USAGE);
        }

        @Test
        void toStandardOutputAndNothingElseThere() {
            Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString(), "-o", "-");

            byte[] bytes = result.out().getBytes(StandardCharsets.UTF_8);
            assertThat(PlanFile.read(bytes, "-").problems()).isEmpty();
            assertThat(result.out()).startsWith("{").endsWith("}\n");
            assertThat(result.err()).contains("Figures", "Cautions", "objective");
        }

        @Test
        void ofAProjectFromStandardInput() {
            Shell.Result result =
                    new Shell(SmallHall.sound()).input(SmallHall.PROJECT).run("plan", "-", "-o", "-", "--quiet");

            assertThat(result.code()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).startsWith("{");
            assertThat(result.err()).isEmpty();
        }
    }

    @Nested
    class SaysOnTheScreen {
        @Test
        void whatWasPlannedFiguresRulesAndCautions() {
            String out =
                    new Shell(SmallHall.sound()).run("plan", project.toString()).out();

            assertThat(out)
                    .contains("Plan for Small hall", "2 loads, 1 of them switched", "No hard rule is broken.", "A peak")
                    .startsWith("Assessment\n  Every hard rule kept; ")
                    .contains("Isolate and lock out")
                    .doesNotContain("\u001b");
        }

        @Test
        void progressInPlainLinesWhereErrorsGoToAFile() {
            String err =
                    new Shell(SmallHall.sound()).run("plan", project.toString()).err();

            assertThat(err).contains("objective 117.3  peak 100.0 A").doesNotContain("\r", "\u001b");
        }

        @Test
        void progressInOneLiveLineOnATerminal() {
            Shell.Result result = new Shell(SmallHall.sound()).onAScreen().run("plan", project.toString());

            assertThat(result.err()).contains("\r\u001b[K", "objective 117.3");
            assertThat(result.out()).contains("\u001b[1mFigures");
        }

        @Test
        void nothingWhenQuiet() {
            Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString(), "--quiet");

            assertThat(result.all()).isEmpty();
        }
    }

    @Nested
    class AsksTheEngineFor {
        @Test
        void thirtySecondsSeedOneAndAtMostEightThreadsUnlessTold() {
            Shell shell = new Shell(SmallHall.sound());

            shell.run("plan", project.toString());

            assertThat(shell.asked.get().budget()).isEqualTo(new Budget.Time(Duration.ofSeconds(30)));
            assertThat(shell.asked.get().seed()).isEqualTo(1);
            assertThat(shell.asked.get().threads())
                    .isEqualTo(Math.min(8, Runtime.getRuntime().availableProcessors()));
            assertThat(shell.asked.get().from()).isEmpty();
        }

        @Test
        void movesOnOneThread() {
            Shell shell = new Shell(SmallHall.sound());

            shell.run("plan", project.toString(), "--moves", "5000");

            assertThat(shell.asked.get().budget()).isEqualTo(new Budget.Moves(5000));
            assertThat(shell.asked.get().threads()).isEqualTo(1);
        }

        @Test
        void anEarlierPlanAsTheStart() {
            Shell shell = new Shell(SmallHall.sound());
            shell.run("plan", project.toString());

            shell.run(
                    "plan",
                    project.toString(),
                    "--from",
                    folder.resolve("hall.plan.json").toString());

            assertThat(shell.asked.get().from())
                    .hasValueSatisfying(plan -> assertThat(plan.assignments()).hasSize(2));
        }

        @Test
        void whatStillFitsOfAPlanOfAnotherProjectAndSaysSo() throws IOException {
            Shell shell = new Shell(SmallHall.sound());
            shell.run("plan", project.toString());
            Files.writeString(project, SmallHall.PROJECT.replace("\"amp\"", "\"amplifier 1\""));

            Shell.Result result = shell.run(
                    "plan",
                    project.toString(),
                    "--from",
                    folder.resolve("hall.plan.json").toString());

            assertThat(result.err()).contains("1 load of this plan not in the project, and left out: 'amp'.");
        }
    }

    @Nested
    class EndsWith {
        @Test
        void fourWhenThePlanBreaksRules() {
            Shell.Result result = new Shell(SmallHall.broken()).run("plan", project.toString());

            assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
            assertThat(result.out()).contains("1 rule broken, in 1 place.", "assigned: 1 place", "load 'amp'");
            assertThat(read(folder.resolve("hall.plan.json")).violations()).hasSize(1);
        }

        /** 10 A and 20 A on three phases are 10 A each at best; 8 A a phase may run. */
        @Test
        void fourWhenNoPlanCanKeepEveryRuleAndSaysSoBeforeTheSearch() throws IOException {
            Files.writeString(project, SmallHall.PROJECT.replace("\"rated_a\": 400", "\"rated_a\": 10"));

            Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString());

            assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
            assertThat(result.err().indexOf("/supply/rated_a"))
                    .isNotNegative()
                    .isLessThan(result.err().indexOf("objective"));
            assertThat(result.out()).contains("What no plan of this project can keep", "rating: ");
            assertThat(folder.resolve("hall.plan.json")).exists();
        }

        /** NEC 210.20(A): 1.25·20 A at the amplifier's breaker of 20 A. */
        private void breakALimit() throws IOException {
            Files.writeString(
                    project,
                    SmallHall.PROJECT
                            .replace("\"breaker_a\": 32", "\"breaker_a\": 20")
                            .replace("\"loads\":", "\"electrical\": {\"practice\": \"nec\"}, \"loads\":"));
        }

        @Test
        void sixWhereAnElectricalLimitIsBroken() throws IOException {
            breakALimit();

            Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString());

            assertThat(result.code()).isEqualTo(ExitCode.LIMITS_BROKEN);
            assertThat(result.out())
                    .contains("1 limit broken (1 electrical)", "Nothing is to be built from this plan.")
                    .contains(
                            "Electrical limits that are broken, and inrush limits in events",
                            "load 'amp' runs at 20.00 A, 125 % of it are 25.00 A");
            assertThat(read(folder.resolve("hall.plan.json")).assessment())
                    .hasValueSatisfying(it -> assertThat(it.limitsBroken()).isEqualTo(1));
        }

        @Test
        void sixInAuditRehearsalAndReport() throws IOException {
            breakALimit();
            new Shell(SmallHall.sound()).run("plan", project.toString());
            String plan = folder.resolve("hall.plan.json").toString();
            Shell shell = new Shell(SmallHall.sound());

            Shell.Result audit = shell.run("audit", project.toString(), plan);
            Shell.Result rehearsal = shell.run("rehearse", project.toString(), plan, "-e", "on");
            Shell.Result report = shell.run(
                    "report",
                    project.toString(),
                    plan,
                    "-o",
                    folder.resolve("d").toString(),
                    "--format",
                    "csv");

            assertThat(List.of(audit, rehearsal, report))
                    .allSatisfy(each -> assertThat(each.code()).isEqualTo(ExitCode.LIMITS_BROKEN))
                    .allSatisfy(
                            each -> assertThat(each.out()).startsWith("Assessment\n  1 limit broken (1 electrical)"));
            assertThat(shell.run("audit", project.toString(), plan, "--json").out())
                    .contains("\"limits_broken\": 1");
            assertThat(Files.readString(folder.resolve("d/assessment.csv"))).contains("electrical limits broken,1");
        }

        @Test
        void sixWhereAskedToBeStrictAndNotEverythingWasChecked() {
            Shell.Result lenient = new Shell(SmallHall.sound()).run("plan", project.toString(), "--quiet");
            Shell.Result strict = new Shell(SmallHall.sound()).run("plan", project.toString(), "--strict");

            assertThat(lenient.code()).isEqualTo(ExitCode.DONE);
            assertThat(strict.code()).isEqualTo(ExitCode.LIMITS_BROKEN);
        }

        @Test
        void fourAndOneLineWhenQuiet() {
            Shell.Result result = new Shell(SmallHall.broken()).run("plan", project.toString(), "--quiet");

            assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
            assertThat(result.out()).isEmpty();
            assertThat(result.err().lines())
                    .singleElement()
                    .asString()
                    .contains("nothing is to be built from this plan: 1 limit broken");
        }

        @Test
        void oneAndNoStackWhenTheEngineFails() {
            Shell shell = new Shell(null);

            Shell.Result plain = shell.run("plan", project.toString());
            Shell.Result debugged = shell.run("plan", project.toString(), "--debug");

            assertThat(plain.code()).isEqualTo(ExitCode.BUG);
            assertThat(plain.err()).contains("It is a bug").doesNotContain("\tat ");
            assertThat(debugged.err()).contains("\tat ");
        }

        @ParameterizedTest
        @CsvSource({
            "--time 30, '30' is no duration",
            "--time 0s, is not between 1ms and 168h",
            "--moves 0, --moves is 0",
            "--moves 3x, is no whole number",
            "--threads 65, '--threads is 65, expected 1 to 64'",
            "--time 3s --moves 5, mutually exclusive",
            "--gap 101, 'gap is 101.0 %, expected 0 to 100 %'",
            "--gap much, is no number of percent",
            "--no-gain 3, is no duration",
            "--sed 4, maybe --seed",
        })
        void twoWhenTheCommandLineIsWrong(String options, String says) {
            String[] arguments = ("plan " + project + " " + options).split(" ");

            Shell.Result result = new Shell(SmallHall.sound()).run(arguments);

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err()).contains(says).contains("evenrise plan --help");
            assertThat(folder.resolve("hall.plan.json")).doesNotExist();
        }

        @Test
        void twoRatherThanOverwriteTheProject() {
            Shell.Result result =
                    new Shell(SmallHall.sound()).run("plan", project.toString(), "-o", project.toString());

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(project).hasContent(SmallHall.PROJECT);
        }

        @Test
        void twoWhenAProjectFromStandardInputLeavesThePlanWithoutAName() {
            Shell.Result result =
                    new Shell(SmallHall.sound()).input(SmallHall.PROJECT).run("plan", "-");

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err()).contains("-o PLAN or -o -");
        }
    }

    @Nested
    class RefusesToSearch {
        @Test
        void whenTheOutputIsAFolder() {
            Shell shell = new Shell(SmallHall.sound());

            Shell.Result result = shell.run("plan", project.toString(), "-o", folder.toString());

            assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(result.err()).contains("is a folder");
            assertThat(shell.asked.get()).isNull();
        }

        @Test
        void whenTheOutputsFolderIsMissing() {
            Shell shell = new Shell(SmallHall.sound());

            Shell.Result result = shell.run(
                    "plan",
                    project.toString(),
                    "-o",
                    folder.resolve("no/where.json").toString());

            assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(result.err()).contains("there is no folder");
            assertThat(shell.asked.get()).isNull();
        }
    }

    @Nested
    class WhenStandardOutputFails {
        @Test
        void saysSoOnce() {
            Shell.Result result = new Shell(SmallHall.sound())
                    .outFailsWith("No space left on device")
                    .run("plan", project.toString(), "-o", "-", "--quiet");

            assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(result.err().lines()).singleElement().asString().contains("No space left on device");
        }

        @Test
        void isQuietWhenItsReaderWentAway() {
            Shell.Result result = new Shell(SmallHall.sound())
                    .outFailsWith("Broken pipe")
                    .run("plan", project.toString(), "-o", "-", "--quiet");

            assertThat(result.code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(result.err()).isEmpty();
        }
    }

    @Test
    void leavesTheEarlierPlanWholeWhenTheSearchFails() throws IOException {
        Path earlier = Files.writeString(folder.resolve("hall.plan.json"), "earlier");

        new Shell(null).run("plan", project.toString());

        assertThat(earlier).hasContent("earlier");
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("hall.project.json", "hall.plan.json");
    }

    private static Plan read(Path file) {
        return PlanFile.read(file).value().orElseThrow();
    }
}
