package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReworkCommandTest {
    private static final Path YARD = Path.of("..", "datasets", "lantern-yard");
    private static final String PROJECT = YARD.resolve("project.json").toString();
    private static final String BUILT = YARD.resolve("built.plan.json").toString();
    private static final String READINGS = YARD.resolve("measured.csv").toString();

    @TempDir
    private Path scratch;

    private Shell.Result rework(Path folder, String... more) {
        Project project = ProjectFile.read(Path.of(PROJECT)).value().orElseThrow();
        Plan built = PlanFile.read(Path.of(BUILT), project).value().orElseThrow();
        List<String> arguments = new ArrayList<>(
                List.of("rework", PROJECT, BUILT, "--moves", "6000", "--threads", "1", "-o", folder.toString()));
        arguments.addAll(List.of(more));
        return new Shell(built).run(arguments.toArray(String[]::new));
    }

    @Nested
    class WithReadings {
        @Test
        void showsTheFrontAndTheOrderOfWork() {
            Shell.Result result = rework(scratch, "--measured", READINGS);

            assertThat(result.code()).isEqualTo(ExitCode.DONE);
            assertThat(result.out())
                    .contains(
                            "12 of 28 loads have measured currents",
                            "breaks hard rules in 3 places",
                            "3 moves cure all of them",
                            "nothing is broken on the way",
                            "licensed professional");
            assertThat(result.out().lines())
                    .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        }

        @Test
        void writesAPlanForEachPointThatPassesTheAudit() throws IOException {
            rework(scratch, "--measured", READINGS, "--max-moves", "4");

            String measured = scratch.resolve("project-as-measured.json").toString();
            try (Stream<Path> files = Files.list(scratch)) {
                List<Path> plans = files.filter(
                                file -> file.getFileName().toString().startsWith("plan-"))
                        .toList();
                assertThat(plans).hasSizeGreaterThan(2);
                for (Path plan : plans) {
                    Shell.Result audit = new Shell(null).run("audit", measured, plan.toString());
                    assertThat(audit.code()).as(audit.all()).isEqualTo(ExitCode.DONE);
                    assertThat(audit.all()).doesNotContain("changed since");
                }
            }
            assertThat(Files.readString(scratch.resolve("front.csv"))).contains("moves,breakers,leads", ",yes,");
            assertThat(Files.readString(scratch.resolve("front.json"))).contains("\"points\"");
            assertThat(Files.readString(scratch.resolve("work.json"))).contains("\"re-terminate\"");
            assertThat(Files.readString(scratch.resolve("work.txt")))
                    .contains("lock and tag", "proven before", "stage 1 of", "Check afterwards", "[ ]  1");
        }

        @Test
        void keepsTheNotesOfTheProjectAndLeavesThoseOfThePlan() throws IOException {
            Path noted = Files.writeString(
                    scratch.resolve("noted.json"),
                    Files.readString(Path.of(PROJECT)).replaceFirst("\"id\": \"sub-1\"", "\"notes\": \"hums\", $0"));
            Path built = Files.writeString(
                    scratch.resolve("noted.plan.json"),
                    Files.readString(Path.of(BUILT)).replaceFirst("\"load\": \"sub-1\"", "\"x-seen\": 1, $0"));
            Project project = ProjectFile.read(noted).value().orElseThrow();
            Plan plan = PlanFile.read(built, project).value().orElseThrow();
            String folder = scratch.resolve("out").toString();

            Shell.Result result = new Shell(plan)
                    .run(
                            "rework",
                            noted.toString(),
                            built.toString(),
                            "--moves",
                            "100",
                            "--threads",
                            "1",
                            "--measured",
                            READINGS,
                            "-o",
                            folder);

            assertThat(Files.readString(scratch.resolve("out/project-as-measured.json")))
                    .contains("\"notes\": \"hums\"");
            assertThat(result.err()).contains("notes and fields of your own are not kept at assignments 'sub-1'");
        }

        @Test
        void ordersTheWorkToAPlanThatIsGivenAsToOneThatItFinds() throws IOException {
            Path found = scratch.resolve("found");
            Path given = scratch.resolve("given");
            rework(found, "--measured", READINGS);

            Shell.Result result = rework(
                    given,
                    "--measured",
                    READINGS,
                    "--to",
                    found.resolve("plan-0003.json").toString());

            assertThat(result.out())
                    .contains("Order of work for the plan chosen (3 moves)", "Nothing was searched for");
            assertThat(given.resolve("work.json")).hasSameTextualContentAs(found.resolve("work.json"));
        }

        @Test
        void laysStagesOutOverNightsAndFailsWhereOneIsTooLong() {
            Shell.Result result = rework(scratch, "--measured", READINGS, "--max-moves", "3", "--night", "30,30");

            assertThat(result.out()).contains("Nights", "the longest night has 30 min", "No night is left for stage 1");
            assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
        }

        @Test
        void refusesToKeepLiveWhatIsNotThere() {
            Shell.Result result = rework(scratch, "--stay-live", "mixr");

            assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(result.err()).contains("'mixr' is to stay live, but is no load");
        }

        @Test
        void writesTheSameAgain() throws IOException {
            rework(scratch.resolve("one"), "--measured", READINGS);
            rework(scratch.resolve("two"), "--measured", READINGS);

            for (String name : List.of("front.csv", "work.json", "work.txt", "plan-0003.json")) {
                assertThat(Files.readString(scratch.resolve("two").resolve(name)))
                        .isEqualTo(Files.readString(scratch.resolve("one").resolve(name)));
            }
        }

        @Test
        void keepsTheSystemRunningWhereItIsAskedTo() {
            String[] best = {"--measured", READINGS, "--per-move", "0"};

            assertThat(rework(scratch, best).out()).containsPattern("\\d +OFF ");
            String[] kept = {"--measured", READINGS, "--per-move", "0", "--keep-running"};
            assertThat(rework(scratch, kept).out()).doesNotContainPattern("\\d +OFF ");
        }

        @Test
        void leavesNoPlanOfAnEarlierRework() throws IOException {
            rework(scratch, "--measured", READINGS);
            List<String> first = plans();
            Path mine = Files.writeString(scratch.resolve("plan-0999.json"), "the engineer's own");

            rework(scratch, "--measured", READINGS, "--max-moves", "0", "--keep-running");

            assertThat(mine).hasContent("the engineer's own");
            List<String> second = plans();
            second.remove(mine.getFileName().toString());
            String manifest = Files.readString(scratch.resolve("evenrise-files.json"));
            assertThat(second)
                    .isNotEmpty()
                    .allSatisfy(name -> assertThat(manifest).contains(name));
            assertThat(first).isNotEqualTo(second);
        }

        private List<String> plans() throws IOException {
            try (Stream<Path> files = Files.list(scratch)) {
                return new ArrayList<>(files.map(file -> file.getFileName().toString())
                        .filter(name -> name.startsWith("plan-"))
                        .sorted()
                        .toList());
            }
        }

        @Test
        void neverOverwritesOrRemovesWhatItIsMadeFrom() throws IOException {
            Path plan = Files.copy(Path.of(BUILT), scratch.resolve("plan-0003.json"));
            byte[] before = Files.readAllBytes(plan);

            Shell.Result result =
                    new Shell(null).run("rework", PROJECT, plan.toString(), "--moves", "10", "-o", scratch.toString());

            assertThat(result.code()).isEqualTo(ExitCode.USAGE);
            assertThat(result.err()).contains("would overwrite what it is made from");
            assertThat(plan).hasBinaryContent(before);
        }

        @Test
        void saysWhatCannotBeCuredWithSoFewMoves() {
            Shell.Result result = rework(scratch, "--measured", READINGS, "--max-moves", "1");

            assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
            assertThat(result.err()).contains("the plan chosen breaks hard rules");
        }

        @Test
        void reportsEveryBadRowAndWritesNothing() throws IOException {
            Path readings =
                    Files.writeString(scratch.resolve("bad.csv"), "load,phase,running_a\nsub-9,A,3\nsub-1,C,lots\n");
            Path folder = scratch.resolve("out");

            Shell.Result result = rework(folder, "--measured", readings.toString());

            assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(result.err()).contains("line 2", "'sub-9'", "line 3", "'lots'");
            assertThat(folder).doesNotExist();
        }

        @Test
        void reportsATableThatIsNotThere() {
            Shell.Result result = rework(scratch, "--measured", "no-such.csv");

            assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(result.err()).contains("'no-such.csv' cannot be read");
        }
    }

    /** The plan as built as an electrician's table, of which every slot is known and no output. */
    @Nested
    class FromAPanelSchedule {
        private final Plan built = PlanFile.read(
                        Path.of(BUILT),
                        ProjectFile.read(Path.of(PROJECT)).value().orElseThrow())
                .value()
                .orElseThrow();

        private List<List<String>> rows() {
            List<List<String>> rows = new ArrayList<>(List.of(List.of("panel", "slot", "load")));
            built.assignments()
                    .forEach(seat -> rows.add(List.of(seat.panel(), String.valueOf(seat.slot()), seat.load())));
            return rows;
        }

        private Shell.Result run(Path schedule) {
            String folder = scratch.resolve("out").toString();
            Plan withoutLeads = built.with()
                    .boards(List.of())
                    .assignments(built.assignments().stream()
                            .map(seat -> seat.with()
                                    .board(Optional.empty())
                                    .output(OptionalInt.empty())
                                    .onSeconds(OptionalDouble.empty())
                                    .offSeconds(OptionalDouble.empty())
                                    .build())
                            .toList())
                    .build();
            return new Shell(withoutLeads)
                    .run(
                            "rework",
                            PROJECT,
                            schedule.toString(),
                            "--measured",
                            READINGS,
                            "--moves",
                            "3000",
                            "--threads",
                            "1",
                            "-o",
                            folder);
        }

        @Test
        void curesWhatSlotsAloneSay() throws IOException {
            Path csv = Files.write(
                    scratch.resolve("panels.csv"),
                    rows().stream().map(row -> String.join(",", row)).toList());

            Shell.Result result = run(csv);

            assertThat(result.code()).as(result.all()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).contains("control is NOT judged", "nothing is broken on the way");
            Shell.Result audit = new Shell(null)
                    .run(
                            "audit",
                            scratch.resolve("out/project-as-measured.json").toString(),
                            scratch.resolve("out/plan-as-built.json").toString());
            assertThat(audit.code()).as(audit.all()).isEqualTo(ExitCode.RULES_BROKEN);
            assertThat(scratch.resolve("out/project-as-scheduled.json")).exists();
        }

        @Test
        void readsAWorkbookAsItReadsText() throws IOException {
            Path csv = Files.write(
                    scratch.resolve("panels.csv"),
                    rows().stream().map(row -> String.join(",", row)).toList());
            Path xlsx = scratch.resolve("panels.xlsx");
            try (Workbook workbook = new Workbook(Files.newOutputStream(xlsx), "test", null)) {
                Worksheet sheet = workbook.newWorksheet("All panels");
                for (int row = 0; row < rows().size(); row++) {
                    for (int column = 0; column < 3; column++) {
                        sheet.value(row, column, rows().get(row).get(column));
                    }
                }
            }

            run(csv);
            String first = Files.readString(scratch.resolve("out/plan-as-built.json"));
            run(xlsx);

            assertThat(scratch.resolve("out/plan-as-built.json")).hasContent(first);
        }

        @Test
        void reportsARowThatIsNoPlace() throws IOException {
            Path csv = Files.writeString(scratch.resolve("panels.csv"), "panel,slot,load\nnowhere,1,sub-1\n");

            Shell.Result result = run(csv);

            assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(result.err()).contains("line 2: the project has no panel 'nowhere'");
            assertThat(scratch.resolve("out")).doesNotExist();
        }
    }

    @Nested
    class WithGearThatIsGone {
        @Test
        void takesItOutAndSaysWhatNobodyKnows() throws IOException {
            Project was = ProjectFile.read(Path.of(PROJECT)).value().orElseThrow();
            Project now = was.withLoads(was.loads().stream()
                    .filter(load -> !load.id().equals("hoist"))
                    .toList());
            Path project = scratch.resolve("now.json");
            try (OutputStream out = Files.newOutputStream(project)) {
                ProjectFile.write(now, out, Format.JSON);
            } catch (WriteFailed e) {
                throw new IOException(e);
            }
            assertThat(now.loads()).hasSize(was.loads().size() - 1);
            String folder = scratch.resolve("out").toString();
            String[] arguments = {"rework", project.toString(), BUILT, "--moves", "200", "--threads", "1", "-o", folder
            };

            Plan built = PlanFile.read(Path.of(BUILT), was).value().orElseThrow();
            Plan rest = built.with()
                    .assignments(built.assignments().stream()
                            .filter(seat -> !seat.load().equals("hoist"))
                            .toList())
                    .build();

            Shell.Result unknown = new Shell(rest).run(arguments);
            List<String> more = new ArrayList<>(List.of(arguments));
            more.addAll(List.of("--was", PROJECT));
            Shell.Result known = new Shell(rest).run(more.toArray(String[]::new));

            assertThat(unknown.out())
                    .contains(
                            "so gone: 'hoist'", "What 'hoist' draws is stated nowhere", "nothing is broken on the way");
            assertThat(known.out()).contains("so gone: 'hoist'").doesNotContain("is stated nowhere");
            assertThat(Files.readString(scratch.resolve("out/work.json"))).contains("\"remove\"");
            assertThat(Files.readString(scratch.resolve("out/work.txt")))
                    .contains("Take out the breaker of hoist")
                    .doesNotContainPattern("Switch hoist[^.]* on again");
        }
    }

    @Nested
    class WithoutReadings {
        @Test
        void hasNothingToCureInASoundPlan() {
            Shell.Result result = rework(scratch);

            assertThat(result.code()).isEqualTo(ExitCode.DONE);
            assertThat(result.out()).contains("The plan as built keeps every hard rule", "plan chosen (0 moves)");
        }

        @Test
        void refusesNumbersOutOfRange() {
            assertThat(rework(scratch, "--per-move", "-1").code()).isEqualTo(ExitCode.USAGE);
            assertThat(rework(scratch, "--max-moves", "-1").code()).isEqualTo(ExitCode.USAGE);
            assertThat(rework(scratch, "--dead-at-once", "0").code()).isEqualTo(ExitCode.USAGE);
        }

        @Test
        void refusesAFileAsFolder() throws IOException {
            Path file = Files.writeString(scratch.resolve("file"), "mine");

            assertThat(rework(file).code()).isEqualTo(ExitCode.NOT_WRITTEN);
            assertThat(file).hasContent("mine");
        }
    }
}
