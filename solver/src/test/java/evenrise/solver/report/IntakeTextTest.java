package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.intake.Mapping;
import evenrise.solver.intake.EquipmentList;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class IntakeTextTest {
    @TempDir
    private Path folder;

    private EquipmentList read(String csv) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), Mapping.USUAL, "Test");
    }

    private static String thirty(String cells) {
        StringBuilder rows = new StringBuilder("Name,Room,Supply,Amps\n");
        for (int i = 0; i < 30; i++) {
            rows.append(cells.replace("#", String.valueOf(i))).append('\n');
        }
        return rows.toString();
    }

    /** Tables are as wide as the screen at most, running text no wider than the narrowest. */
    @ParameterizedTest
    @ValueSource(ints = {80, 200})
    void keepsWithinTheScreen(int columns) throws IOException {
        EquipmentList list =
                read(thirty("Loudspeaker processor of the upper circle with a name that is rather long for a"
                        + " table and a note of where it stands #,R#,208-240,many"));
        Paint paint = Paint.NONE.within(columns);

        assertThat(Stream.concat(ReadingText.lines(list, paint).stream(), IntakeText.lines(list, true, paint).stream()))
                .allSatisfy(line -> assertThat(DisplayWidth.of(line)).isLessThanOrEqualTo(columns));
        assertThat(ReadingText.lines(list, paint))
                .anySatisfy(line -> assertThat(line).matches(" +volts +208-240 +2 poles +guessed +30"));
    }

    @Test
    void foldsRemarksThatDifferInNamesAndFiguresOnly() throws IOException {
        EquipmentList list = read(thirty("Amp #,R#,120,many#") + "Lamp,R,120,\n");

        List<String> folded = IntakeText.lines(list, false, Paint.NONE);
        List<String> full = IntakeText.lines(list, true, Paint.NONE);

        assertThat(String.join(" ", folded).replaceAll(" +", " "))
                .contains(
                        "30 × row 2, column D; row 3, column D;", "and 22 more places. The first: 'many0' is no number")
                .contains("row 32: 'Lamp' has neither watts")
                .contains("--all shows each row");
        assertThat(String.join(" ", full).replaceAll(" +", " "))
                .contains("row 31, column D: 'many29' is no number")
                .doesNotContain("--all");
    }

    @Test
    void tellsHowManyPiecesAreLeftOut() throws IOException {
        assertThat(IntakeText.lines(read("Qty,Name,Amps\n3,Lamp,1\n2,Fire alarm,1\n"), false, Paint.NONE))
                .anySatisfy(line -> assertThat(line).contains("2 pieces of 5 left out"));
    }
}
