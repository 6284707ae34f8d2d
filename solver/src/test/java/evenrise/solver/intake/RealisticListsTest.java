package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.TripCurve;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented lists in the manner of people who have never heard of this program. */
@DisplayName("Lists as they come")
class RealisticListsTest {
    private static EquipmentList read(String name) throws IOException {
        boolean isEurope = List.of("german-firm", "french-firm", "spanish-firm").contains(name);
        Mapping mapping = isEurope
                ? Mapping.builder().lineToNeutralVolts(230).frequencyHertz(50).build()
                : Mapping.USUAL;
        return EquipmentList.read(Path.of("src", "test", "resources", "intake", name + ".csv"), mapping, "Test");
    }

    private static Load load(EquipmentList list, String name) {
        return list.project().orElseThrow().loads().stream()
                .filter(load -> load.name().contains(name))
                .findFirst()
                .orElseThrow();
    }

    /** Pieces are counted by hand. */
    @ParameterizedTest(name = "{0}: {1} pieces, {2} of them left out, {3} problems")
    @CsvSource({
        "rental-house, 170, 2, 2",
        "consultant-schedule, 37, 11, 1",
        "church-volunteers, 27, 4, 3",
        "american-panel-schedule, 13, 1, 1",
        "german-firm, 39, 2, 0",
        "french-firm, 18, 1, 0",
        "spanish-firm, 38, 1, 0",
        "everything-in-one-cell, 13, 3, 1"
    })
    void loseNoPiece(String name, int listed, int leftOut, int problems) throws IOException {
        EquipmentList list = read(name);

        assertThat(list.listed()).isEqualTo(listed);
        assertThat(list.leftOut()).isEqualTo(leftOut);
        assertThat(list.pieces()).isEqualTo(listed - leftOut);
        assertThat(list.problems()).hasSize(problems);
        Project project = list.project().orElseThrow();
        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(EquipmentList.read(
                                Path.of("src", "test", "resources", "intake", name + ".csv"), list.mapping(), "Test")
                        .project())
                .contains(project);
    }

    @Test
    void ofARentalHouseSayPowerAndVoltageInOneCell() throws IOException {
        EquipmentList list = read("rental-house");

        // 2000 W / (208 V · 0.95), between two lines
        assertThat(load(list, "Sub amp").poles()).isEqualTo(2);
        assertThat(load(list, "Sub amp").runningAmps()).isCloseTo(10.13, within(0.01));
        assertThat(load(list, "1T chain hoist").poles()).isEqualTo(3);
        assertThat(load(list, "1T chain hoist").runningAmps()).isEqualTo(16);
        // 180 W, not 60 W, over 120 V and 0.95
        assertThat(load(list, "LED wall panel").runningAmps() / piecesOn(load(list, "LED wall panel")))
                .isCloseTo(180 / 120.0 / 0.95, within(0.002));
    }

    private static int piecesOn(Load load) {
        return Integer.parseInt(load.name().replaceAll(".*: ([0-9]+) × .*", "$1"));
    }

    @Test
    void ofAConsultantHaveVoltageAndPhasesApart() throws IOException {
        EquipmentList list = read("consultant-schedule");

        assertThat(load(list, "POWER AMPLIFIER, 4 CH").poles()).isEqualTo(2);
        assertThat(load(list, "POWER AMPLIFIER, 4 CH").breakerAmps()).isEqualTo(20);
        // NEC table 430.248: 3/4 hp at 115 V draw 13.8 A
        assertThat(load(list, "MOTORIZED SCREEN").runningAmps()).isEqualTo(13.8);
        assertThat(load(list, "ASSISTIVE LISTENING").switched()).isFalse();
        assertThat(list.rowsLeftOut())
                .anySatisfy(text -> assertThat(text).contains("'TOUCH PANEL'", "PoE"))
                .anySatisfy(text -> assertThat(text).contains("ALL CIRCUITS 20A/1P"));
    }

    @Test
    void ofVolunteersCountInTheirNames() throws IOException {
        EquipmentList list = read("church-volunteers");

        assertThat(load(list, "Sound desk").runningAmps()).isEqualTo(2);
        assertThat(load(list, "Sound desk").role()).isEqualTo(Role.PROCESSING);
        // NEC table 430.248: 1.5 hp at 115 V draw 20 A
        assertThat(load(list, "organ blower").runningAmps()).isEqualTo(20);
        assertThat(list.questions()).anySatisfy(text -> assertThat(text).contains("'Old projector'", "16.0 A"));
    }

    @Test
    void ofAnAmericanScheduleGoByHorsepowerAndCircuit() throws IOException {
        EquipmentList list = read("american-panel-schedule");

        // NEC table 430.250: 7½ hp at 208 V draw 24.2 A; four on one circuit
        assertThat(load(list, "Line shaft winch").runningAmps()).isCloseTo(4 * 24.2, within(0.01));
        assertThat(list.questions()).anySatisfy(text -> assertThat(text).contains("'1,3,5'", "96.80 A", "60 A"));
        assertThat(list.project().orElseThrow().loads())
                .filteredOn(load -> load.name().contains("Server"))
                .extracting(Load::panels)
                .containsExactlyInAnyOrder(List.of("LP-1"), List.of("LP-2"));
    }

    @Test
    void ofAGermanFirmHaveDecimalCommasAndHeadings() throws IOException {
        EquipmentList list = read("german-firm");

        assertThat(load(list, "Verstärker").runningAmps()).isEqualTo(8);
        assertThat(load(list, "Mischpult").curve()).contains(TripCurve.C);
        assertThat(load(list, "Mischpult").poles()).isEqualTo(1);
        assertThat(load(list, "Prospektzug").poles()).isEqualTo(3);
        assertThat(load(list, "Prospektzug").breakerAmps()).isEqualTo(20);
        assertThat(list.rowsLeftOut())
                .filteredOn(text -> text.contains("heading"))
                .hasSize(3);
        assertThat(list.rowsLeftOut()).anySatisfy(text -> assertThat(text).contains("'Summe'"));
    }

    @Test
    void ofAFrenchFirmHaveTheirVoltageUnderAlimentation() throws IOException {
        EquipmentList list = read("french-firm");

        assertThat(load(list, "Gradateur").poles()).isEqualTo(3);
        // 80 % of 63 A, as nobody states its power
        assertThat(load(list, "Gradateur").runningAmps()).isCloseTo(50.4, within(0.001));
        // 1850 W / (230 V · 0.95)
        assertThat(load(list, "Vidéoprojecteur").runningAmps()).isCloseTo(8.467, within(0.001));
        assertThat(load(list, "Treuil").breakerAmps()).isEqualTo(16);
    }

    @Test
    void ofASpanishFirmHaveTheirUnitsInARowBelowTheHeaders() throws IOException {
        EquipmentList list = read("spanish-firm");

        // 1.6 kW / (230 V · 0.95)
        assertThat(load(list, "Etapa").runningAmps()).isCloseTo(7.323, within(0.001));
        assertThat(load(list, "Etapa").role()).isEqualTo(Role.AMPLIFIER);
        assertThat(load(list, "Polipasto").poles()).isEqualTo(3);
        assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("row 2", "units of the columns"));
        assertThat(list.rowsLeftOut()).singleElement().asString().contains("'Total' is taken for a sum");
    }

    @Test
    void withEverythingInOneCellAreTakenApart() throws IOException {
        EquipmentList list = read("everything-in-one-cell");

        assertThat(load(list, "Amp 8ch").poles()).isEqualTo(2);
        assertThat(load(list, "Video wall").poles()).isEqualTo(3);
        assertThat(load(list, "Video wall").runningAmps()).isEqualTo(24);
        assertThat(list.problems()).singleElement().asString().contains("row 7", "'L5-20'");
    }
}
