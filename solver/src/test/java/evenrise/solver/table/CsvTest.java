package evenrise.solver.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvTest {
    @TempDir
    private Path folder;

    /** What a spreadsheet would compute begins with an apostrophe; a number with its sign is none of that. */
    @Test
    void makesFormulasTexts() {
        assertThat(Csv.of(List.of(List.of("a", "=1+1", "@x", "-3 V", "+cmd", "\tx", "-3.5", "+1e5", "", "b=1"))))
                .startsWith("a,'=1+1,'@x,'-3 V,'+cmd,'\tx,-3.5,+1e5,,b=1\r\n");
    }

    /** The breaker 20/2 is no 20 February. */
    @Test
    void keepsBreakersFromBecomingDates() {
        assertThat(Csv.of(List.of(List.of("20/2", "6.3/2", "208/3/60", "P1/2"))))
                .startsWith("'20/2,6.3/2,'208/3/60,P1/2\r\n");
    }

    @Test
    void remarksAreReadByNobodyAsRows() throws IOException {
        Path file = Files.writeString(
                folder.resolve("bill.csv"),
                Csv.of(List.of(List.of("item", "price"), List.of("panel", "10")), List.of("Not\nincluded: tax")));

        assertThat(Files.readString(file)).contains("\r\n# Note: Not included: tax\r\n");
        assertThat(TableFileReader.read(file))
                .singleElement()
                .satisfies(table -> assertThat(table.rows()).hasSize(2));
    }
}
