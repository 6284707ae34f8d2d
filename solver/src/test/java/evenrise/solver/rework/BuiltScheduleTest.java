package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.Severity;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Assignment;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.table.TextTable;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BuiltScheduleTest {
    private final Project project = aProject()
            .panels(aPanel("DP1").slots(12), aPanel("DP2").slots(12))
            .boardTypes(aBoardType("T").outputs(8).startDelaySeconds(0, 2).stepSeconds(0.5))
            .boards(aBoard("B1").type("T").in("DP1"))
            .loads(
                    aLoad("amp").amplifier().name("Front amplifier").breakerAmps(20),
                    aLoad("light").unswitched().breakerAmps(16),
                    aLoad("hoist").unswitched().threePole().breakerAmps(16))
            .build();

    private BuiltSchedule read(String... lines) {
        try {
            return BuiltScheduleReader.read(
                    List.of(TextTable.of(String.join("\n", lines) + "\n", 10_000)
                            .table()),
                    project);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static Assignment seat(BuiltSchedule schedule, String load) {
        return Changes.seats(schedule.plan()).get(load);
    }

    @Nested
    class ARow {
        @Test
        void saysWhereABreakerAndItsLeadAre() {
            BuiltSchedule read = read(
                    "Panel,Slots,Phases,Load,Breaker,Control,start_delay_s,step_s",
                    "DP1,3,B,amp,20 A,B1 output 4,2,0.5",
                    "DP2,\"2, 4, 6\",ABC,hoist,16 A,,,",
                    "DP1,1,A,light,16,,,");

            assertThat(read.problems()).isEmpty();
            assertThat(seat(read, "amp").panel()).isEqualTo("DP1");
            assertThat(seat(read, "amp").slot()).isEqualTo(3);
            assertThat(seat(read, "amp").board()).contains("B1");
            assertThat(seat(read, "amp").output()).isEqualTo(OptionalInt.of(4));
            assertThat(seat(read, "hoist").phases()).containsExactly(Phase.A, Phase.B, Phase.C);
            assertThat(read.statesControl()).isTrue();
            assertThat(read.plan().boards()).singleElement().satisfies(board -> {
                assertThat(board.startDelaySeconds()).hasValue(2);
                assertThat(board.stepSeconds()).hasValue(0.5);
            });
        }

        @ParameterizedTest
        @CsvSource({"Front amplifier", "FRONT-AMPLIFIER", "Amp"})
        void namesALoadByItsIdOrItsName(String name) {
            assertThat(Changes.seats(
                            read("panel,way,description", "DP1,3," + name).plan()))
                    .containsOnlyKeys("amp");
        }

        @Test
        void mayBeOneOfAPole() {
            BuiltSchedule read = read(
                    "panel,slot,load,breaker", "DP1,1,hoist,16/3", "DP1,3,hoist,", "DP1,5,hoist,", "DP1,2,light,16");

            assertThat(read.problems()).isEmpty();
            assertThat(seat(read, "hoist").slot()).isEqualTo(1);
            assertThat(seat(read, "hoist").phases()).hasSize(3);
        }

        @ParameterizedTest
        @ValueSource(strings = {"spare", "SPARE 20A", "blank", "-", "Space"})
        void feedsNobodyWhereItSaysSo(String word) {
            BuiltSchedule read = read("panel,slot,load,breaker", "DP1,1,light,16", "DP1,4," + word + ",20");

            assertThat(Changes.seats(read.plan())).containsOnlyKeys("light");
            assertThat(read.notes()).anyMatch(note -> note.contains("spare: 'DP1 4'"));
        }

        @ParameterizedTest
        @CsvSource({"20,20", "C16,16", "C 16 A,16", "25A/1,25", "1P 10A,10", "3x C32,32", "'16,5 A',16.5"})
        void hasARatingInWhateverWay(String cell, double amps) {
            BuiltScheduleRow row = new BuiltScheduleRow("", "DP1", "1", "amp", cell, "", "", "", "");

            assertThat(row.breakerAmps()).contains(amps);
        }
    }

    /** A pattern that tries every way to part a hundred thousand blanks would never end. */
    @Test
    void readsCellsOfAnyLength() {
        String blanks = "B1" + " ".repeat(100_000) + "x";

        assertThat(read("panel,slot,load,breaker,control", "DP1,1,amp,\"" + blanks + "\",\"" + blanks + "\"")
                        .problems())
                .anyMatch(problem -> problem.contains("names no output"));
    }

    @Nested
    class WhatIsNotStated {
        /** Outputs and settings are not there: nothing is judged of them, and nothing is invented. */
        @Test
        void isNotJudgedAndIsTold() {
            BuiltSchedule read = read("panel,slot,load", "DP1,3,amp", "DP1,1,light", "DP2,1,hoist");
            Project judged = read.judged(project);

            assertThat(read.statesControl()).isFalse();
            assertThat(read.notes()).anyMatch(note -> note.contains("control is NOT judged"));
            assertThat(judged.boards()).isEmpty();
            assertThat(judged.supply().inrushLimitAmps()).isEmpty();
            assertThat(Layout.of(judged, read.plan()).placements())
                    .allSatisfy(each -> assertThat(each.load().switched()).isFalse());
        }

        /** What is left is a project that reads like any other, of every dataset. */
        @Test
        void leavesAProjectThatIsSound() throws IOException, WriteFailed {
            try (Stream<Path> folders = Files.list(Path.of("..", "datasets"))) {
                for (Path file : folders.map(folder -> folder.resolve("project.json"))
                        .filter(Files::exists)
                        .sorted()
                        .toList()) {
                    Project whole = ProjectFile.read(file).value().orElse(null);
                    if (whole != null) {
                        ByteArrayOutputStream out = new ByteArrayOutputStream();
                        ProjectFile.write(read("panel,slot,load").judged(whole), out, Format.JSON);
                        assertThat(ProjectFile.read(out.toByteArray(), file.toString())
                                        .problems())
                                .filteredOn(problem -> problem.severity() == Severity.ERROR)
                                .as(file.toString())
                                .isEmpty();
                    }
                }
            }
        }

        /** The board's type can begin at two times, so its outputs alone say no time. */
        @Test
        void isAllControlWhereSettingsOfBoardsAreMissing() {
            assertThat(read("panel,slot,load,control", "DP1,3,amp,B1 output 4").statesControl())
                    .isFalse();
        }

        @Test
        void isALoadThatIsNewOrOneThatIsGone() {
            BuiltSchedule read = read("panel,slot,load", "DP1,3,amp", "DP1,5,Old projector lift");

            assertThat(read.notes()).anyMatch(note -> note.contains("taken for new: 'light', 'hoist'"));
            assertThat(BuiltPlant.of(read.judged(project), read.plan(), Optional.empty())
                            .gone())
                    .containsExactly("Old projector lift");
        }

        @Test
        void isNoRatingThatTheProjectHasOtherwise() {
            BuiltSchedule read = read("panel,slot,load,breaker", "DP1,3,amp,16 A", "DP1,1,light,16 A");

            assertThat(read.breakerAmps()).isEqualTo(Map.of("amp", 16.0));
            Project judged = read.judged(project);
            assertThat(BuiltPlant.of(judged, read.plan(), read.was(judged)).replacing())
                    .containsEntry("amp (as built)", "amp");
        }
    }

    @Nested
    class ATableThatCannotBeUsed {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "panel,slot,load;DP9,1,amp | the project has no panel 'DP9'. Maybe 'DP1'",
                    "panel,slot,load;DP1,x,amp | slot 'x' is no number",
                    "panel,slot,load;DP1,1,hoistt | no load 'hoistt'. Maybe it is 'hoist'",
                    "panel,slot,load;DP1,1,hoist;DP2,3,hoist | stands in panels DP1, DP2",
                    "panel,slot,load;DP1,1,light;DP1,2,light | are no place for one breaker",
                    "panel,slot,load;DP1,11,hoist | are no place for one breaker",
                    "panel,slot,load,control;DP1,1,amp,somewhere | names no output",
                    "panel,slot,load,control;DP1,1,amp,B7/1 | the project has no board 'B7'",
                    "where,what;1,amp | no row that names its columns",
                    "slot,load;1,amp | no column panel"
                })
        void isReportedByItsLine(String table, String problem) {
            assertThat(read(table.split(";")).problems()).anyMatch(each -> each.contains(problem));
        }
    }
}
