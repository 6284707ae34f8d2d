package evenrise.solver.commissioning;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.measured.DeviceReading;
import evenrise.model.measured.PlaceReading;
import evenrise.model.measured.PoleReading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Sheets of the lantern yard, as somebody may have filled them. */
class FilledSheetsTest {
    private static final Path YARD = Path.of("../datasets/lantern-yard");
    private static final String HEADER =
            "Load,Phase,\"Idle measured, A\",\"Running measured, A\",\"On measured, s\",Date,Meter\n";

    private static Project project;
    private static Plan plan;

    @BeforeAll
    static void readTheYard() throws IOException {
        project = ProjectFile.read(YARD.resolve("project.json")).value().orElseThrow();
        plan = PlanFile.read(YARD.resolve("built.plan.json"), project).value().orElseThrow();
    }

    private static ReadSheets read(String... texts) {
        Map<String, List<evenrise.solver.table.ReadTable>> files = new LinkedHashMap<>();
        try {
            for (String text : texts) {
                files.put(
                        "sheet" + files.size() + ".csv",
                        List.of(TextTable.of(text, 10_000).table()));
            }
        } catch (IOException e) {
            throw new IllegalArgumentException(e);
        }
        return FilledSheets.read(files, project, plan, Optional.empty());
    }

    private static PoleReading pole(String rows) {
        ReadSheets read = read(HEADER + rows);
        assertThat(read.problems()).isEmpty();
        return read.readings().poles().get(0);
    }

    private static String problem(String rows) {
        ReadSheets read = read(HEADER + rows);
        assertThat(read.problems()).hasSize(1);
        return read.problems().get(0);
    }

    @Nested
    class ARow {
        @Test
        void tellsIdleFromRunning() {
            PoleReading read = pole("main-1,A,1.7,8.2,,,");

            assertThat(read.idleAmps()).hasValue(1.7);
            assertThat(read.runningAmps()).hasValue(8.2);
            assertThat(read.phase()).contains(Phase.A);
        }

        @Test
        void mayStateUnits() {
            assertThat(pole("main-1,A,1700 mA,,,,").idleAmps()).hasValue(1.7);
        }

        @Test
        void mayNameItsPhaseByNumber() {
            assertThat(pole("main-1,L2,1.7,,,,").phase()).contains(Phase.B);
        }

        @Test
        void mayBeAboutAllPoles() {
            assertThat(pole("hoist,ABC,0.2,,,,").phase()).isEmpty();
        }

        @Test
        void hasADayHoweverItIsWritten() {
            for (String day :
                    List.of("2026-03-14", "14.03.2026", "14.3.2026", "3/14/2026", "14/3/2026", "2026-03-14T10:00")) {
                assertThat(pole("main-1,A,1.7,,," + day + ",").visit().date())
                        .as(day)
                        .contains("2026-03-14");
            }
        }

        @Test
        void withoutAReadingIsLeftOut() {
            ReadSheets read = read(HEADER + "main-1,A,,,,,\nmain-2,A,1.6,,,,\n");

            assertThat(read.readings().poles()).hasSize(1);
            assertThat(read.notes()).anyMatch(each -> each.contains("1 row of 2 without a reading"));
        }
    }

    @Nested
    class AProblem {
        @Test
        void namesLineCellAndCure() {
            assertThat(problem("main-1,A,a lot,,,,"))
                    .isEqualTo(
                            "sheet0.csv line 2: idle measured of load 'main-1' is 'a lot', expected a number of A such"
                                    + " as 12.4.");
        }

        @Test
        void isALoadThatIsNone() {
            assertThat(problem("main1,A,1.7,,,,"))
                    .endsWith("load 'main1' is not in the project. Maybe it is 'main-1'.");
        }

        @Test
        void isAClampTheWrongWayRound() {
            assertThat(problem("main-1,A,-1.7,,,,")).contains("Maybe the clamp was the wrong way round");
        }

        @Test
        void isACommaThatCanBeReadInTwoWays() {
            assertThat(problem("main-1,A,\"1,234\",,,,")).contains("that can be read in one way");
        }

        @Test
        void isADayThatCanBeReadInTwoWays() {
            assertThat(problem("main-1,A,1.7,,,3/4/2026,")).contains("Write it as 2026-03-14");
        }

        @Test
        void isADayOnWhichNobodyReads() {
            assertThat(problem("main-1,A,1.7,,,2206-03-14,")).contains("is the day 2206-03-14, expected 2000-01-01 to");
        }

        @Test
        void isMoreIdleThanRunning() {
            assertThat(problem("main-1,A,8.2,1.7,,,")).contains("Maybe the two columns are exchanged");
        }

        @Test
        void isABlankSheet() {
            assertThat(read(HEADER + "main-1,A,,,,,\n").problems()).anyMatch(each -> each.contains("are blank"));
        }

        @Test
        void isATableOfAnotherKind() {
            assertThat(read("Board,Type\nB1,eight\n").problems())
                    .anyMatch(each -> each.contains("is a filled commissioning sheet or a list of readings"));
        }

        @Test
        void isThePlansOwnTableOfCircuits() {
            assertThat(read("Panel,Slots,Load,\"Running, A\"\nhall,1,main-1,9.5\n")
                            .problems())
                    .isNotEmpty();
        }

        @Test
        void hidesNoOther() {
            assertThat(read(HEADER + "main-1,A,x,,,,\nmain-2,A,y,,,,\n").problems())
                    .hasSize(2);
        }
    }

    @Test
    void metersSayHowFarReadingsMayBeOff() {
        ReadSheets read = read(
                HEADER + "main-1,A,1.7,,,,Clamp 1\n",
                "Meter,\"Range, A\",\"Off by, % of range\",\"Off by, % of reading\",\"Off by, s\"\nclamp1,100,1.5,,0.2\n");

        assertThat(read.problems()).isEmpty();
        assertThat(read.readings().poles().get(0).visit().meter().errorAmps(1.7))
                .isEqualTo(1.5);
        assertThat(read.readings().poles().get(0).visit().meter().seconds()).isEqualTo(0.2);
    }

    @Test
    void aClassWithoutARangeIsAProblem() {
        assertThat(read(
                                HEADER + "main-1,A,1.7,,,,M1\n",
                                "Meter,\"Range, A\",\"Off by, % of range\",\"Off by, % of reading\"\nM1,,2,\n")
                        .problems())
                .anyMatch(each -> each.contains("Fill in the range, A"));
    }

    @Test
    void aFilledColumnThatIsNotReadIsTold() {
        ReadSheets read = read("Load,\"Idle measured, A\",Torque\nmain-1,1.7,2.5\n");

        assertThat(read.notes()).anyMatch(each -> each.contains("not read, and left in the file: 'torque'"));
    }

    @Test
    void panelsHaveTotalsVoltageRotationAndInsulation() {
        ReadSheets read = read("Panel;Measured A to neutral, V;Idle measured B, A;Neutral measured, A;Phase rotation;"
                + "Insulation, MΩ;Pass or fail\nhall;231,5;17,2;3,1;right;> 500;pass\n");

        assertThat(read.problems()).isEmpty();
        PlaceReading hall = read.readings().places().get(0);
        assertThat(hall.volts()).containsEntry(Phase.A, 231.5);
        assertThat(hall.idleAmps()).containsEntry(Phase.B, 17.2);
        assertThat(hall.neutralAmps()).hasValue(3.1);
        assertThat(hall.isRotationRight()).contains(true);
        assertThat(hall.insulationMegohms()).hasValue(500);
        assertThat(hall.passed()).contains(true);
    }

    @Test
    void aPanelThatIsNoneIsAProblem() {
        assertThat(read("Panel,\"Idle measured A, A\"\nhal,3\n").problems())
                .containsExactly(
                        "sheet0.csv line 2: the project has no panel, node or supply 'hal'. Maybe it is 'hall'.");
    }

    @Test
    void residualCurrentDevicesAreRead() {
        ReadSheets read = read(
                "Place,Protects,\"Rated, mA\",\"Leakage measured, mA\",\"Tripped at, mA\",\"Tripped after, ms\",Pass or fail\n"
                        + "hall,hoist,30,4.5,22,28,pass\n");

        assertThat(read.problems()).isEmpty();
        DeviceReading device = read.readings().devices().get(0);
        assertThat(device.leakageMilliamps()).hasValue(4.5);
        assertThat(device.trippedAfterMillis()).hasValue(28);
    }

    @Test
    void aPlainListIsReadToo() {
        ReadSheets read = read("load,phase,running_a,idle_a\nsub-1,C,13.6,1.9\n");

        assertThat(read.problems()).isEmpty();
        assertThat(read.readings().poles().get(0).runningAmps()).hasValue(13.6);
    }
}
