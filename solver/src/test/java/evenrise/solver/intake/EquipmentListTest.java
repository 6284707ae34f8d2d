package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.check.Feasibility;
import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EquipmentListTest {
    @TempDir
    private Path folder;

    private EquipmentList read(String csv) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), Mapping.USUAL, "Test");
    }

    private static Load only(EquipmentList list) {
        assertThat(list.problems()).isEmpty();
        assertThat(list.project().orElseThrow().loads()).hasSize(1);
        return list.project().orElseThrow().loads().get(0);
    }

    @Nested
    class Figures {
        @Test
        void comeFromAmpere() throws IOException {
            assertThat(only(read("Name,Amps,Role\nMixer,2.5,processing\n")).runningAmps())
                    .isEqualTo(2.5);
        }

        @Test
        void comeFromWattsByPowerFactorAndVoltage() throws IOException {
            Load load = only(read("Name,Watts,Voltage,Power factor,Role\nAmp,1800,208,0.9,amplifier\n"));

            // 1800 W / (207.85 V · 0.9)
            assertThat(load.runningAmps()).isCloseTo(9.623, within(1e-3));
            assertThat(load.poles()).isEqualTo(2);
            assertThat(load.role()).isEqualTo(Role.AMPLIFIER);
        }

        @Test
        void comeInTheUnitOfTheHeaderOrOfTheCell() throws IOException {
            assertThat(only(read("Name,Power [kW],Power factor\nLamp,0.6,1\n")).runningAmps())
                    .isEqualTo(5);
            assertThat(only(read("Name,Power [kW],Power factor\nLamp,600 W,1\n"))
                            .runningAmps())
                    .isEqualTo(5);
        }

        @Test
        void ofSeveralPiecesOnOneBreakerAreSums() throws IOException {
            Load load = only(read("Qty,Name,Room,Amps,Idle,Inrush\n4,Lamp,Stage,2,1.5,20\n"));

            assertThat(load.runningAmps()).isEqualTo(8);
            assertThat(load.idleAmps()).isEqualTo(6);
            assertThat(load.inrushPeakAmps()).isEqualTo(80);
            assertThat(load.name()).isEqualTo("Stage: 4 × Lamp");
        }
    }

    @Nested
    class Bundling {
        @Test
        void keepsRoomsRolesZonesAndFeedsApart() throws IOException {
            EquipmentList list = read("Name,Room,Role,Zone,Feed,Amps\n"
                    + "Desk,A,processing,main,,1\nDesk,B,processing,main,,1\nAmp,A,amplifier,main,,1\n"
                    + "Desk,A,processing,other,,1\nDesk,A,processing,main,A,1\nDesk,A,processing,main,B,1\n");

            assertThat(list.breakers()).isEqualTo(6);
        }

        @Test
        void putsRedundantFeedsIntoDifferentPanels() throws IOException {
            Project project = read("Name,Room,Role,Feed,Amps\nCore A,R,network,A,1\nCore B,R,network,B,1\n")
                    .project()
                    .orElseThrow();

            assertThat(project.loads().get(0).apartFrom())
                    .containsExactly(project.loads().get(1).id());
            assertThat(project.panels().size()).isGreaterThanOrEqualTo(2);
        }

        @Test
        void staysWithinTheContinuousRating() throws IOException {
            // 16 A of a breaker of 20 A: two pieces of 8 A, not three
            assertThat(read("Qty,Name,Amps,Inrush\n3,Lamp,8,12\n").breakers()).isEqualTo(2);
        }

        @Test
        void staysWithinTheTripBandForTheSummedInrush() throws IOException {
            // 20 A of band C holds 100 A; a piece counts for about 45 A
            assertThat(read("Qty,Name,Amps,Idle,Inrush\n4,Server,1,1,95\n").breakers())
                    .isEqualTo(2);
        }

        @Test
        void givesALargePieceABreakerOfItsOwn() throws IOException {
            assertThat(only(read("Name,Amps,Inrush\nDimmer,30,60\n")).breakerAmps())
                    .isEqualTo(40);
        }

        @Test
        void saysThatNoBreakerHoldsAPiece() throws IOException {
            assertThat(read("Name,Amps\nFurnace,80\n").problems())
                    .singleElement()
                    .asString()
                    .contains("row 2", "'Furnace'", "80.00 A", "63 A");
        }
    }

    @Nested
    class Groups {
        @Test
        void dropAmplifiersAndHoldTheRest() throws IOException {
            Project project = read("Name,Role,Zone,Amps\nAmp,amplifier,hall,2\nDesk,processing,hall,2\n")
                    .project()
                    .orElseThrow();

            assertThat(project.shutdownGroups())
                    .extracting(group -> group.id() + " " + group.onEmergency())
                    .containsExactly("hall-drop " + OnEmergency.DROP, "hall-hold " + OnEmergency.HOLD);
        }
    }

    @Nested
    class DirtySheets {
        @Test
        void haveTheirProblemsListedInOnePassWithTheirPlaces() throws IOException {
            EquipmentList list =
                    read("Concert hall,,\n\nQty,Name,Watts\nx,Amp,100\n2,Amp,many\n3,Desk,\n1,Desk,5 bananas\n");

            assertThat(list.problems()).hasSize(4);
            assertThat(list.problems().get(0)).contains("row 4, column A", "'x'");
            assertThat(list.problems().get(1)).contains("row 5, column C", "'many'");
            assertThat(list.problems().get(2)).contains("row 6", "'Desk'", "neither watts");
            assertThat(list.problems().get(3)).contains("row 7, column C", "'bananas'");
        }

        @Test
        void mayHaveTitlesSumsAndBlankRows() throws IOException {
            EquipmentList list = read("Hall 3\n\n,Qty,Name,Room,Amps\n,,,,\n,2,Desk,Booth,1\n,1,Desk,,1\n,,Total,,3\n");

            assertThat(list.problems()).isEmpty();
            assertThat(list.pieces()).isEqualTo(3);
            assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("'Total'", "left out"));
            assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("empty room goes on"));
        }

        @Test
        void mayBeSeparatedBySemicolonsWithDecimalCommas() throws IOException {
            Path file = folder.resolve("list.csv");
            Files.write(file, "Bezeichnung;Strom\nVerstärker;2,5\n".getBytes(Charset.forName("windows-1252")));

            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "Test");

            assertThat(only(list).runningAmps()).isEqualTo(2.5);
            assertThat(only(list).role()).isEqualTo(Role.AMPLIFIER);
        }

        @Test
        void areNotReadMoreWidelyThanTheySay() throws IOException {
            assertThat(only(read("Name,Voltage,Amps\nSwitch,100-240V,1\n")).poles())
                    .isEqualTo(1);
            assertThat(only(read("Name,Voltage,Amps\nHoist,120/208,1\n")).poles())
                    .isEqualTo(3);
            assertThat(read("Name,Amps,PF\nLamp,1,2\n").problems()).hasSize(1);
            assertThat(read("Name,Amps,Idle\nLamp,1,-1\n").problems()).hasSize(1);
            assertThat(read("Qty,Name,Room,Amps\n5,,R1,\n1,Lamp,R1,1\n").problems())
                    .hasSize(1);
            assertThat(read("Name,Amps\nSumming mixer,1\n").pieces()).isEqualTo(1);
        }

        @Test
        void sayWhereNoHeaderIsFound() throws IOException {
            assertThat(read("1,2,3\n4,5,6\n").problems())
                    .singleElement()
                    .asString()
                    .contains("--map", "--template");
        }

        @Test
        void mayBeWorkbooksWithFormulasDatesAndErrors() throws IOException {
            Path file = folder.resolve("list.xlsx");
            try (Workbook workbook = new Workbook(Files.newOutputStream(file), "test", null)) {
                Worksheet sheet = workbook.newWorksheet("Gear");
                sheet.value(0, 0, "Qty");
                sheet.value(0, 1, "Name");
                sheet.value(0, 2, "Amps");
                sheet.value(1, 0, 2);
                sheet.value(1, 1, "Desk");
                sheet.value(1, 2, 1.5);
                sheet.value(2, 1, "Lamp");
                sheet.formula(2, 2, "1+1");
                sheet.value(3, 1, "Server");
                sheet.value(3, 2, java.time.LocalDate.of(2026, 5, 1));
                sheet.style(3, 2).format("yyyy-mm-dd").set();
            }

            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "Test");

            assertThat(list.pieces()).isEqualTo(2);
            assertThat(list.problems()).hasSize(2);
            assertThat(list.problems().get(0)).contains("sheet 'Gear', row 3, column C", "formula");
            assertThat(list.problems().get(1)).contains("sheet 'Gear', row 4, column C", "date");
        }

        @Test
        void areRefusedWhereTheyAreNoWholeWorkbook() throws IOException {
            Path file = Files.write(folder.resolve("torn.xlsx"), new byte[] {'P', 'K', 3, 4, 0, 0, 1, 2, 3});

            assertThatThrownBy(() -> EquipmentList.read(file, Mapping.USUAL, "Test"))
                    .isInstanceOf(IOException.class);
        }

        /** Nothing is lost in silence: every piece is on a breaker, or its row is among the problems. */
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25})
        void loseNothingInSilence(int seed) throws IOException {
            Random random = new Random(seed);
            String[] quantities = {"1", "2", "3", "", "x", "2,5", "-1", " 4 ", "1e1", "#REF!"};
            String[] currents = {"1", "2.5", "2,5 A", "", "n/a", "12 kA", "300 mA", "abc", "0", "9999999", "\u202e7"};
            String[] names = {"Amp", "Desk", "", "<script>", "=cmd|x", "Total", "\u202eevil", "😀", "a".repeat(10_000)};
            StringBuilder csv = new StringBuilder("Qty,Name,Room,Amps\n");
            int rows = 60;
            for (int i = 0; i < rows; i++) {
                csv.append('"')
                        .append(pick(random, quantities))
                        .append("\",\"")
                        .append(pick(random, names))
                        .append("\",R")
                        .append(random.nextInt(3))
                        .append(",\"")
                        .append(pick(random, currents))
                        .append("\"\n");
            }

            EquipmentList list = read(csv.toString());

            Set<String> told = new java.util.TreeSet<>();
            list.problems().forEach(text -> told.add(text.replaceAll("^row (\\d+).*", "$1")));
            long leftOut = list.guesses().stream()
                    .filter(text -> text.contains("left out"))
                    .count();
            long blank = csv.toString()
                    .lines()
                    .skip(1)
                    .filter(line -> line.matches("\"\",\"\",R\\d,\"\""))
                    .count();
            assertThat(told.size() + leftOut + blank + list.rows()).isEqualTo(rows);
            list.project().ifPresent(project -> {
                assertThat(ProjectChecks.errors(project)).isEmpty();
                assertThat(project.loads()).hasSize(list.breakers());
            });
        }

        private String pick(Random random, String[] of) {
            return of[random.nextInt(of.length)];
        }
    }

    @Test
    void makesAProjectThatCanBePlanned() throws IOException {
        StringBuilder csv = new StringBuilder("Qty,Name,Room,Role,Zone,Feed,Voltage,Amps\n");
        for (int room = 0; room < 6; room++) {
            csv.append("3,Desk,R")
                    .append(room)
                    .append(",processing,z")
                    .append(room % 2)
                    .append(",A,120,1.5\n");
            csv.append("3,Desk,R")
                    .append(room)
                    .append(",processing,z")
                    .append(room % 2)
                    .append(",B,120,1.5\n");
            csv.append("9,Amp,R")
                    .append(room)
                    .append(",amplifier,z")
                    .append(room % 2)
                    .append(",,208,7.5\n");
            csv.append("5,Screen,R").append(room).append(",display,,,120,4\n");
        }

        Project project = read(csv.toString()).project().orElseThrow();

        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(Feasibility.impossible(project)).isEmpty();
    }

    @Test
    void readsItsOwnTemplates() throws IOException {
        Path csv = Files.write(folder.resolve("t.csv"), Template.csv());
        Path workbook = Files.write(folder.resolve("t.xlsx"), Template.workbook());

        for (Path file : List.of(csv, workbook)) {
            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "Test");
            assertThat(list.guesses().stream().filter(text -> text.contains("is read as")))
                    .hasSize(13);
            assertThat(list.guesses().stream().filter(text -> text.contains("example")))
                    .hasSize(2);
        }
        assertThat(new String(Template.csv(), StandardCharsets.UTF_8)).startsWith("Quantity,Name");
    }
}
