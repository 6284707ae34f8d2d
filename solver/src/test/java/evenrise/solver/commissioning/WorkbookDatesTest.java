package evenrise.solver.commissioning;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.project.Project;
import evenrise.solver.table.TableFileReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.function.ObjIntConsumer;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Days that somebody typed into a sheet of a workbook as dates: a number there, and a style that says what it is. */
class WorkbookDatesTest {
    private static final Path YARD = Path.of("../datasets/lantern-yard");
    private static final int DATE = 3;

    @TempDir
    private Path folder;

    /** @param day fills the cell of the date, in the row that it is told */
    private static byte[] workbook(ObjIntConsumer<Worksheet> day) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "test", null)) {
            Worksheet sheet = workbook.newWorksheet("commissioning");
            String[] headers = {"Load", "Phase", "Idle measured, A", "Date"};
            for (int column = 0; column < headers.length; column++) {
                sheet.value(0, column, headers[column]);
            }
            sheet.value(1, 0, "main-1");
            sheet.value(1, 1, "A");
            sheet.value(1, 2, 1.7);
            day.accept(sheet, 1);
        }
        return out.toByteArray();
    }

    private static ReadSheets read(byte[] workbook) throws IOException {
        Project project = ProjectFile.read(YARD.resolve("project.json")).value().orElseThrow();
        return FilledSheets.read(
                Map.of("plan.xlsx", TableFileReader.workbook(workbook)),
                project,
                PlanFile.read(YARD.resolve("built.plan.json"), project).value().orElseThrow(),
                Optional.empty());
    }

    private static Optional<String> day(byte[] workbook) throws IOException {
        ReadSheets read = read(workbook);
        assertThat(read.problems()).isEmpty();
        return read.readings().poles().get(0).visit().date();
    }

    private static void styled(Worksheet sheet, int row, Number days) {
        sheet.value(row, DATE, days);
        sheet.style(row, DATE).format("dd/mm/yyyy").set();
    }

    @Test
    void areReadAsTheirDay() throws IOException {
        byte[] workbook = workbook((sheet, row) -> {
            sheet.value(row, DATE, LocalDate.of(2026, 3, 14));
            sheet.style(row, DATE).format("dd.mm.yyyy").set();
        });

        assertThat(day(workbook)).contains("2026-03-14");
    }

    /** 14 March 2026 is day 46095 (days from 30 December 1899: 126 years of 365 days, 31 leap days, and 74 days). */
    @Test
    void mayHaveATimeOfDay() throws IOException {
        assertThat(126 * 365 + 31 + 74).isEqualTo(46_095);

        assertThat(day(workbook((sheet, row) -> styled(sheet, row, 46_095.99)))).contains("2026-03-14");
    }

    @Test
    void thatLostTheirStyleAreReadAsWell() throws IOException {
        assertThat(day(workbook((sheet, row) -> sheet.value(row, DATE, 46_095))))
                .contains("2026-03-14");
    }

    @Test
    void areAskedForWhereTheNumberIsNoDayOfOurTime() throws IOException {
        ReadSheets read = read(workbook((sheet, row) -> sheet.value(row, DATE, 20_260_314)));

        assertThat(read.problems()).singleElement().asString().contains("expected 2000-01-01 to 2099-12-31");
    }

    /** Day 44633 from the first of 1904 is the same day: 1462 lie between the two beginnings. */
    @Test
    void areCountedFrom1904WhereTheWorkbookSaysSo() throws IOException {
        byte[] workbook = workbook((sheet, row) -> styled(sheet, row, 44_633));

        assertThat(day(since1904(workbook))).contains("2026-03-14");
    }

    private byte[] since1904(byte[] workbook) throws IOException {
        Path file = Files.write(folder.resolve("since-1904.xlsx"), workbook);
        try (FileSystem zip = FileSystems.newFileSystem(file)) {
            Path part = zip.getPath("xl/workbook.xml");
            String said = Files.readString(part)
                    .replaceFirst("<workbookPr[^>]*/>", "")
                    .replaceFirst("(<workbook [^>]*>)", "$1<workbookPr date1904=\"true\"/>");
            assertThat(said).contains("date1904=\"true\"");
            Files.writeString(part, said);
        }
        return Files.readAllBytes(file);
    }
}
