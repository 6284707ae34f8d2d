package evenrise.solver.rendering;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;

/** How much of a project was guessed stands on every cover. */
class GuessesOnCoversTest {
    private static final String COUNT = "2 figures";
    private static final String LOADS = "of 1 load, stated by nobody";

    private static Document document() {
        Project drawn = aProject().boards(aBoard("B1")).loads(aLoad("L1")).build();
        Project project = drawn.withLoads(List.of(drawn.loads().get(0).withGuessed(List.of("power_factor", "idle_a"))));
        Layout layout = Layout.of(
                project,
                aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1)).build());
        return Documents.of(
                new Imprint("Hall", "C7", "2026-01-02", "0123456789abcdef", "test"),
                Evaluation.of(layout, () -> ProvenBounds.of(layout.project())),
                Optional.empty(),
                List.of());
    }

    @Test
    void ofThePage() {
        assertThat(HtmlPage.of(document())).contains(COUNT, LOADS);
    }

    @Test
    void ofThePrint() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document()).on(PrintedSheets.Paper.A4))) {
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            assertThat(first.getText(pdf).replaceAll("\\s+", " ")).contains(COUNT, LOADS);
        }
    }

    @Test
    void ofTheWorkbook() throws IOException {
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(WorkbookFile.of(document())))) {
            List<Row> rows = workbook.getFirstSheet().read();
            assertThat(rows)
                    .anySatisfy(row -> assertThat(row.stream().map(GuessesOnCoversTest::text))
                            .contains("Guessed", COUNT));
        }
    }

    private static String text(Cell cell) {
        return cell == null ? "" : cell.getText();
    }
}
