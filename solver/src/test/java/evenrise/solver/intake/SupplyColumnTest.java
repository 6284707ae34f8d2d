package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import evenrise.model.check.Feasibility;
import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.intake.PanelOfRoom;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("What feeds a piece")
class SupplyColumnTest {
    @TempDir
    private Path folder;

    private EquipmentList read(String csv, Mapping mapping) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), mapping, "Test");
    }

    private Project project(String csv) throws IOException {
        EquipmentList list = read(csv, Mapping.USUAL);
        assertThat(list.problems()).isEmpty();
        assertThat(list.listed()).isEqualTo(list.pieces() + list.leftOut());
        Project project = list.project().orElseThrow();
        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(Feasibility.impossible(project)).isEmpty();
        return project;
    }

    @Nested
    class AColumn {
        @ParameterizedTest(name = "''{0}'' with ''{1}'' and ''{2}'' is read as {3}")
        @CsvSource({
            "Supply, 208V, 120V, volts",
            "Supply, 208, 120, volts",
            "Supply, 208V 1ph, 208V 3ph, volts",
            "Supply, 120/208, 3~, volts",
            "Supply, A, B, feed",
            "Supply, Feed A, A+B, feed",
            "Supply, P1, DB-2, fed_from",
            "Supply, UPS, MDP, fed_from",
            "Supply, 20/2, 20A/1P, breaker",
            "Source, LP1, LP2, fed_from",
            "Feed, P1, P2, fed_from",
            "Feed, A, B, feed",
            "Fed from, P1, P2, fed_from",
            "Power supply, 120V, 208V, volts",
            "Circuit, 1, 2, circuit",
            "Circuit, A, B, circuit",
            "Circuit, 20A/1P, 30A/2P, breaker",
            "Supply, 1, 3, phases"
        })
        void isWhatItsValuesAre(String header, String first, String second, String means) throws IOException {
            EquipmentList list =
                    read("Name,Amps," + header + "\nLamp,1," + first + "\nDesk,1," + second + "\n", Mapping.USUAL);

            assertThat(list.columns())
                    .filteredOn(column -> column.letters().equals("C"))
                    .extracting(column -> column.means().orElse(""), ReadColumn::by)
                    .containsExactly(tuple(means, ReadColumn.By.VALUES));
        }

        @Test
        void goesBehindOneThatSaysItPlainly() throws IOException {
            EquipmentList list = read("Name,Amps,Supply,Voltage\nLamp,1,208,120\n", Mapping.USUAL);

            assertThat(list.project().orElseThrow().loads().get(0).poles()).isEqualTo(1);
            assertThat(list.notRead()).singleElement().asString().contains("'Supply'");
        }

        /** One sheet says voltages, panels and feeds under one header. */
        @Test
        void ofSeveralKindsIsReadValueByValue() throws IOException {
            Project project = project("Name,Amps,Supply\nLamp,1,208V\nDesk,1,P7\nCore,1,A\nCore,1,B\nAmp,2,208V 3ph\n");

            assertThat(project.loads())
                    .extracting(Load::name, Load::poles, Load::panels)
                    .contains(tuple("Lamp", 2, List.of()), tuple("Desk", 1, List.of("P7")), tuple("Amp", 3, List.of()));
            assertThat(project.loads())
                    .filteredOn(load -> !load.apartFrom().isEmpty())
                    .hasSize(1);
        }

        @Test
        void isIgnoredWhereSomebodySaysSo() throws IOException {
            String csv = "Name,Amps,Voltage\nLamp,1,on the roof\n";

            assertThat(read(csv, Mapping.USUAL).problems()).hasSize(1);
            EquipmentList list = read(csv, Mapping.USUAL.withIgnored(List.of("voltage")));
            assertThat(list.problems()).isEmpty();
            assertThat(list.notRead()).singleElement().asString().contains("'Voltage'", "as was asked");
            assertThat(read(csv, Mapping.USUAL.withIgnored(List.of("Volts"))).guesses())
                    .anySatisfy(text -> assertThat(text).contains("'Volts'", "none has that header"));
        }
    }

    @Nested
    class FeedsAAndB {
        @ParameterizedTest
        @ValueSource(strings = {"A+B", "A/B", "A & B", "A and B", "a,b", "dual", "Dual PSU", "both", "redundant", "2N"})
        void ofOneRowAreTwoLoadsInDifferentPanels(String feed) throws IOException {
            Project project = project("Name,Room,Amps,Feed\nCore,R,3,\"" + feed + "\"\n");

            assertThat(project.loads()).extracting(Load::runningAmps).containsExactly(3.0, 3.0);
            assertThat(project.loads().get(0).apartFrom())
                    .containsExactly(project.loads().get(1).id());
            assertThat(project.panels()).hasSize(2);
        }

        @Test
        void countThePieceOnceAndNoteWhatTheyAre() throws IOException {
            EquipmentList list = read("Qty,Name,Room,Amps,Feed\n2,Core,R,3,A+B\n", Mapping.USUAL);

            assertThat(list.pieces()).isEqualTo(2);
            assertThat(list.notes().values())
                    .anySatisfy(text -> assertThat(text).contains("feed A of two"))
                    .anySatisfy(text -> assertThat(text).contains("feed B of two"));
            assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("counts with all that it draws"));
        }

        @ParameterizedTest
        @ValueSource(strings = {"P1/P2", "P1 + P2", "P1, P2", "P1 & P2"})
        void areFromTheTwoPanelsThatTheRowNames(String panels) throws IOException {
            assertThat(project("Name,Room,Amps,Feed,Panel\nCore,R,3,A+B,\"" + panels + "\"\n")
                            .loads())
                    .extracting(Load::panels)
                    .containsExactly(List.of("P1"), List.of("P2"));
        }

        @Test
        void keepTheTwoCircuitsThatTheRowNames() throws IOException {
            assertThat(project("Name,Amps,Feed,Circuit\nCore,3,A+B,\"LA-1, LB-1\"\n")
                            .loads())
                    .extracting(Load::id)
                    .containsExactlyInAnyOrder("LA-1", "LB-1");
        }

        /** No plan could keep them apart. */
        @Test
        void fromOnePanelAreAskedAbout() throws IOException {
            String csv = "Name,Room,Amps,Feed,Panel\nCore,R,3,A+B,P1\n";

            assertThat(project(csv).loads())
                    .allSatisfy(load -> assertThat(load.apartFrom()).isEmpty());
            assertThat(read(csv, Mapping.USUAL).questions())
                    .anySatisfy(text -> assertThat(text).contains("row 2", "'Core'", "both from panel 'P1'"));
        }
    }

    @Test
    void aMappingSaysWhichPanelFeedsARoomWhereTheRowDoesNot() throws IOException {
        Mapping mapping = Mapping.builder()
                .panelsOfRooms(List.of(new PanelOfRoom("loft LEFT", "P5"), new PanelOfRoom("Attic", "P6")))
                .build();

        EquipmentList list = read("Name,Room,Amps,Panel\nLamp,Loft left,1,\nDesk,Loft left,1,P1\n", mapping);

        assertThat(list.project().orElseThrow().loads())
                .extracting(Load::name, Load::panels)
                .containsExactly(tuple("Loft left: Lamp", List.of("P5")), tuple("Loft left: Desk", List.of("P1")));
        assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("'Attic'", "no such room"));
    }

    @Test
    void phasesStandInAColumnOfTheirOwn() throws IOException {
        assertThat(project("Name,Amps,Volts,Ph\nWinch,1,208,3\nAmp,1,208,1\nLamp,1,120,1\n")
                        .loads())
                .extracting(Load::name, Load::poles)
                .containsExactlyInAnyOrder(tuple("Winch", 3), tuple("Amp", 2), tuple("Lamp", 1));
    }

    @Test
    void aHeadingBetweenRowsIsNoPieceAndTheRoomWhereNoColumnSaysIt() throws IOException {
        EquipmentList list = read("Qty,Name,Amps\n,STAGE:,\n2,Lamp,1\n,Loft,\n1,Lamp,1\n", Mapping.USUAL);

        assertThat(list.rowsLeftOut())
                .hasSize(2)
                .allSatisfy(text -> assertThat(text).contains("heading"));
        assertThat(list.project().orElseThrow().loads())
                .extracting(Load::name)
                .containsExactly("STAGE: 2 × Lamp", "Loft: Lamp");
    }
}
