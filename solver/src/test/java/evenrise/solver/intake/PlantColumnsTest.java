package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.Feasibility;
import evenrise.model.check.MappingChecks;
import evenrise.model.check.Objection;
import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("An equipment list that says how the plant is made")
class PlantColumnsTest {
    @TempDir
    private Path folder;

    private EquipmentList read(String csv, Mapping mapping) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), mapping, "Test");
    }

    private Project sound(String csv) throws IOException {
        EquipmentList list = read(csv, Mapping.USUAL);
        assertThat(list.problems()).isEmpty();
        Project project = list.project().orElseThrow();
        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(Feasibility.impossible(project)).isEmpty();
        return project;
    }

    @Nested
    class Columns {
        @Test
        void ofSystemsMakeSystemsWithGroupsAndBoardsOfTheirOwn() throws IOException {
            Project project = sound("Name,Role,Zone,System,Amps\nAmp,amplifier,main,North hall,9\n"
                    + "Amp,amplifier,main,Annex,9\nDesk,processing,,Annex,2\n");

            assertThat(project.systems()).extracting(SwitchedSystem::id).containsExactly("North hall", "Annex");
            assertThat(project.loads())
                    .extracting(load -> load.system().orElseThrow())
                    .containsExactly("North hall", "Annex", "Annex");
            assertThat(project.shutdownGroups())
                    .extracting(group -> group.id())
                    .containsExactly("north-hall-main-drop", "annex-main-drop");
            assertThat(project.boards())
                    .extracting(board -> board.system().orElseThrow())
                    .containsExactlyInAnyOrder("North hall", "Annex", "Annex");
        }

        @Test
        void ofPanelsMakeThosePanelsAndFurtherOnesForTheRest() throws IOException {
            Project project = sound("Name,Fed from,Amps\nAmp,DB 7,9\nAmp,DB 7,9\nDesk,P1,2\nLamp,,3\n");

            assertThat(project.panels()).extracting(Panel::id).containsExactly("DB 7", "P1", "P2");
            assertThat(project.loads().stream().map(Load::panels).collect(Collectors.toSet()))
                    .containsExactlyInAnyOrder(List.of("DB 7"), List.of("P1"), List.of());
        }

        @Test
        void ofRacksAreKept() throws IOException {
            assertThat(sound("Name,Room,Rack,Amps\nDesk,Booth,R3,2\n")
                            .loads()
                            .get(0)
                            .rack())
                    .contains("R3");
        }

        @Test
        void ofContactorsPutTheOthersBehindTheFirst() throws IOException {
            Project project = sound("Qty,Name,Role,Zone,Contactor,Amps\n3,Front amp,amplifier,main,K1,12\n"
                    + "1,Sub amp,amplifier,main,K1,13\n1,Other amp,amplifier,main,,12\n");
            Load first = project.loads().get(0);

            assertThat(first.switchedBy()).isEqualTo(SwitchedBy.CONTACTOR);
            assertThat(first.shutdownGroup()).contains("main-drop");
            assertThat(project.loads().subList(1, 4)).allSatisfy(load -> {
                assertThat(load.comesWith()).contains(first.id());
                assertThat(load.shutdownGroup()).isEmpty();
            });
            assertThat(project.loads().get(4).switchedBy()).isEqualTo(SwitchedBy.BREAKER);
        }

        @Test
        void ofVoltagesToNeutralAndOffDelaysAreKept() throws IOException {
            Project project = sound("Name,Voltage,Line to neutral (V),Off delay (s),Amps\nProjector,208,120,90,6\n");
            Load load = project.loads().get(0);

            assertThat(load.poles()).isEqualTo(2);
            assertThat(load.lineToNeutralVolts()).hasValue(120);
            assertThat(load.offAfterSeconds()).isEqualTo(90);
            assertThat(project.boardTypes()).extracting(BoardType::off).containsExactly(OffTiming.EACH);
        }
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Name,Line to neutral,Amps;Lamp,277,2|row 2, column B: 277 V to neutral, expected 120 V within 5 %",
                "Name,Off delay (s),Amps;Lamp,90000,2|row 2, column B: 90000 s, expected 0 to 86400 s.",
                "Name,Off delay (s),Switched,Amps;Lamp,5,no,2|row 2, column B: an off delay for what is not switched",
                "Name,Contactor,Switched,Amps;Lamp,K1,no,2|row 2, column B: contactor 'K1' for what is not switched",
                "Name,Role,Contactor,Amps;Amp,amplifier,K1,9;Desk,processing,K1,2|row 3: behind contactor 'K1' with row 2",
                "Name,Fed from,Contactor,Amps;Amp,P1,K1,9;Amp,P2,K1,9|row 3: behind contactor 'K1' with row 2"
            })
    void whatContradictsItselfIsAProblemAtItsPlace(String rows, String problem) throws IOException {
        EquipmentList list = read(rows.replace(';', '\n') + "\n", Mapping.USUAL);

        assertThat(list.problems()).singleElement().asString().contains(problem);
    }

    @Nested
    class Control {
        private static final String LIST = "Qty,Name,Role,Zone,Amps\n9,Amp,amplifier,main,12\n2,Desk,processing,,2\n";

        private static BoardType type(String id, int outputs) {
            return BoardType.builder()
                    .id(id)
                    .outputs(outputs)
                    .startDelaySeconds(List.of(0.0, 40.0))
                    .stepSeconds(List.of(3.0))
                    .build();
        }

        @Test
        void thatNobodyStatesIsAskedForAndMarkedAsToBeFilledIn() throws IOException {
            EquipmentList list = read(LIST, Mapping.USUAL);

            assertThat(list.questions())
                    .singleElement()
                    .asString()
                    .contains("which control boards are there?", "--map");
            assertThat(list.project().orElseThrow().boardTypes())
                    .extracting(BoardType::id)
                    .containsExactly("TO-BE-FILLED-IN");
        }

        @Test
        void ofTheMappingIsTakenAsItIs() throws IOException {
            List<BoardType> types = List.of(type("X", 5), type("Y", 10));
            EquipmentList list = read(LIST, Mapping.builder().boardTypes(types).build());

            assertThat(list.questions()).isEmpty();
            assertThat(list.project().orElseThrow().boardTypes()).isEqualTo(types);
            assertThat(list.project().orElseThrow().boards())
                    .extracting(Board::type)
                    .containsExactly("Y", "X");
        }

        @Test
        void isNotAskedForWhereNothingIsSwitched() throws IOException {
            EquipmentList list = read("Name,Switched,Amps\nLamp,no,2\n", Mapping.USUAL);

            assertThat(list.questions()).isEmpty();
            assertThat(list.project().orElseThrow().boardTypes()).isEmpty();
        }

        @Test
        void thatCannotGoOffLateIsAskedAbout() throws IOException {
            EquipmentList list = read(
                    "Name,Off delay (s),Amps\nProjector,60,6\n",
                    Mapping.builder().boardTypes(List.of(type("X", 5))).build());

            assertThat(list.questions()).singleElement().asString().contains("off: each");
        }

        @Test
        void ofTheMappingIsWholeAndNamedApart() {
            Mapping mapping = Mapping.builder()
                    .boardTypes(List.of(
                            type("X", 5),
                            type("X", 6),
                            BoardType.builder().id("Z").outputs(4).build()))
                    .build();

            assertThat(MappingChecks.errors(mapping))
                    .extracting(Objection::pointer)
                    .containsExactlyInAnyOrder(
                            "/board_types/1/id", "/board_types/2/start_delay_s", "/board_types/2/step_s");
        }
    }
}
