package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.Format;
import evenrise.model.file.MappingFile;
import evenrise.model.file.Reading;
import evenrise.model.file.WriteFailed;
import evenrise.model.intake.CellReading;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Role;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@DisplayName("A mapping that says how a list was read")
class WholeMappingTest {
    private static final String MESSY = "Lakeside pavilion,,,,,,,,\n"
            + "Tag,Qty,Item,Location,Supply,Load [W],Breaker,Comments,Colour\n"
            + "A-1,2,Amplifier,Loft,208V 1ph,1200,20/2,,red\n"
            + "A-2,2,Amplifier,Loft,208-240,TBC,20/2,,red\n"
            + ",,STAGE,,,,,,\n"
            + "DSP,1,Processor,Rack room,A+B,\"1,200\",,,red\n"
            + "NET,1,Core switch,Rack room,A,90,,,red\n"
            + "PROJ,1,Projector,House,P2,1.6 kW,,,red\n"
            + ",8,Moving light,Grid,120,~4.2 A,,by others,red\n"
            + ",1,Hub,Rack room,48 VDC,40,,,red\n"
            + ",1,Hoist,Grid,208V 3ph,1 hp,,,red\n"
            + ",1,Hazer,Grid,120,lots,see plan,,red\n"
            + ",1,Fire alarm panel,Rack room,120,100,,,red\n";

    @TempDir
    private Path folder;

    private Mapping throughAFile(Mapping mapping, Format format) throws WriteFailed {
        Path file = folder.resolve("mapping." + format);
        MappingFile.write(mapping, file, format);
        Reading<Mapping> read = MappingFile.read(file);
        assertThat(read.problems()).isEmpty();
        return read.value().orElseThrow();
    }

    private Path list(String csv) throws IOException {
        return Files.writeString(folder.resolve("list.csv"), csv);
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void givesTheSameProjectAgain(Format format) throws IOException, WriteFailed {
        Path list = list(MESSY);
        EquipmentList first = EquipmentList.read(list, Mapping.USUAL, "Test");

        EquipmentList again = EquipmentList.read(list, throughAFile(first.mapping(), format), "Test");

        assertThat(first.project()).isPresent();
        assertThat(again.project()).isEqualTo(first.project());
        assertThat(again.notes()).isEqualTo(first.notes());
        assertThat(again.questions()).isEqualTo(first.questions());
        assertThat(again.problems()).isEqualTo(first.problems());
        assertThat(again.mapping()).isEqualTo(first.mapping());
    }

    @Test
    void givesTheSameProjectOfSheetsWithDifferentHeaders() throws IOException, WriteFailed {
        Path list = folder.resolve("list.xlsx");
        try (Workbook workbook = new Workbook(Files.newOutputStream(list), "test", null)) {
            sheet(workbook.newWorksheet("Audio"), List.of("Qty", "Item", "Watts"), List.of(2, "Amplifier", 1500));
            sheet(
                    workbook.newWorksheet("Video"),
                    List.of("Device", "Amps", "Supply"),
                    List.of("Projector", 1.9, "208V"));
            sheet(workbook.newWorksheet("Legend"), List.of("What", "Why"), List.of("red", "new"));
        }
        EquipmentList first = EquipmentList.read(list, Mapping.USUAL, "Test");

        Mapping mapping = throughAFile(first.mapping(), Format.YAML);

        assertThat(mapping.sheets()).hasSize(2);
        EquipmentList again = EquipmentList.read(list, mapping, "Test");
        assertThat(first.project()).isPresent();
        assertThat(again.project()).isEqualTo(first.project());
    }

    private static void sheet(Worksheet sheet, List<String> headers, List<Object> values) {
        for (int i = 0; i < headers.size(); i++) {
            sheet.value(0, i, headers.get(i));
            if (values.get(i) instanceof Number number) {
                sheet.value(1, i, number);
            } else {
                sheet.value(1, i, values.get(i).toString());
            }
        }
    }

    @Test
    void namesEveryTextThatIsNotPlain() throws IOException {
        Mapping mapping = EquipmentList.read(list(MESSY), Mapping.USUAL, "Test").mapping();

        assertThat(mapping.readings())
                .extracting(each -> each.of() + " " + each.name().orElse("") + " '" + each.written() + "'")
                .contains(
                        "role Hazer ''",
                        "volts  ''",
                        "volts Hub '48 VDC'",
                        "watts Amplifier 'TBC'",
                        "watts  '~4.2 A'",
                        "watts  'lots'",
                        "breaker  'see plan'",
                        "switched Core switch ''",
                        "life_safety Fire alarm panel ''")
                .doesNotHaveDuplicates();
        assertThat(mapping.readings())
                .allSatisfy(each -> assertThat(each.reads()).isEqualTo(each.written()));
        assertThat(mapping.ignore()).containsExactly("Colour");
    }

    @Nested
    class Corrected {
        private EquipmentList read(String csv, CellReading... readings) throws IOException {
            Mapping mapping = Mapping.builder().readings(List.of(readings)).build();
            return EquipmentList.read(list(csv), mapping, "Test");
        }

        private CellReading of(String column, String name, String written, String reads) {
            return CellReading.builder()
                    .of(column)
                    .name(Optional.of(name).filter(it -> !it.isEmpty()))
                    .written(written)
                    .reads(reads)
                    .build();
        }

        @Test
        void readsOneTextAsAnother() throws IOException {
            String csv = "Name,Amps\nLamp,lots\nDesk,lots\n";

            assertThat(read(csv, of("amps", "", "lots", "3 A")).pieces()).isEqualTo(2);
            EquipmentList one = read(csv, of("amps", "Lamp", "lots", "3 A"));
            assertThat(one.pieces()).isEqualTo(1);
            assertThat(one.problems()).hasSize(1);
        }

        @Test
        void saysWhatAListHasNoColumnFor() throws IOException {
            Load load = read(
                            "Name,Amps\nGadget,1\n",
                            of("role", "Gadget", "", "amplifier"),
                            of("volts", "Gadget", "", "208"),
                            of("switched", "Gadget", "", "no"))
                    .project()
                    .orElseThrow()
                    .loads()
                    .get(0);

            assertThat(load.role()).isEqualTo(Role.AMPLIFIER);
            assertThat(load.poles()).isEqualTo(2);
            assertThat(load.switched()).isFalse();
            assertThat(load.guessed()).doesNotContain("role", "poles");
        }

        /** What is about some pieces goes before what is about all. */
        @Test
        void goesByTheNameFirst() throws IOException {
            EquipmentList list = read(
                    "Name,Amps\nLamp,TBC\nDesk,TBC\n", of("amps", "", "TBC", "TBC"), of("amps", "Lamp", "TBC", "3"));

            assertThat(list.questions())
                    .filteredOn(text -> text.contains("what does"))
                    .hasSize(1);
        }

        @Test
        void leavesAPieceOutByAQuantityOfNone() throws IOException {
            EquipmentList list = read("Qty,Name,Amps\n1,Lamp,1\n1,Desk,1\n", of("quantity", "Lamp", "1", "0"));

            assertThat(list.pieces()).isEqualTo(1);
            assertThat(list.rowsLeftOut()).hasSize(1);
        }
    }
}
