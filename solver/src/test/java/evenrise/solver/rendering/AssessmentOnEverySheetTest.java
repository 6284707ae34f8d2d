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
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Of two loads one has no place: every sheet says that nothing is to be built from it, and what its figures leave out. */
class AssessmentOnEverySheetTest {
    private static final String FIRST = "Nothing is to be built from this plan. 1 limit broken (1 of hard rules)";
    private static final String LEFT_OUT = "without 1 load that has no place, 3.3 A a phase";

    private static Document document(boolean whole) {
        Project project = aProject()
                .boards(aBoard("B1"))
                .loads(aLoad("L1"), aLoad("L2").unswitched())
                .build();
        var plan = aPlan().board("B1", 0, 0.5)
                .assignments(anAssignment("L1").at("P1", 1).on("B1", 1));
        var bare = whole ? plan.assignments(anAssignment("L2").at("P1", 3)) : plan;
        Layout layout = Layout.of(project, PlanFinisher.timed(project, bare.build()));
        return Documents.of(
                new Imprint("Hall", "A", "2026-01-02", "0123456789abcdef", "test"),
                Evaluation.of(layout, () -> ProvenBounds.of(project)),
                Optional.empty(),
                List.of());
    }

    @Test
    void inPrint() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document(false)).on(PrintedSheets.Paper.LETTER))) {
            assertThat(pdf.getNumberOfPages()).isGreaterThan(5);
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                assertThat(text(pdf, page)).as("page %d", page).contains(FIRST, LEFT_OUT);
            }
        }
    }

    @Test
    void inPrintOfAPlanThatKeepsEverythingOnlyWhatWasChecked() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document(true)).on(PrintedSheets.Paper.A4))) {
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                assertThat(text(pdf, page))
                        .contains("Every hard rule kept; ", "electrical checks made")
                        .doesNotContain("Nothing is to be built");
            }
        }
    }

    @Test
    void onThePageAndOnItsSheets() {
        String page = HtmlPage.of(document(false));

        assertThat(page.substring(page.indexOf("<main>")))
                .startsWith("<main>\n<p id=\"assessment-first\"")
                .contains(FIRST);
        assertThat(page).containsPattern("@page\\{@top-left\\{content:\"Nothing");
    }

    /** The headers of all sheets are in the workbook's parts, one a sheet. */
    @Test
    void inTheWorkbook(@TempDir Path folder) throws IOException {
        Path file = Files.write(folder.resolve("plan.xlsx"), WorkbookFile.of(document(false)));
        try (ZipFile zip = new ZipFile(file.toFile())) {
            List<? extends ZipEntry> sheets = zip.stream()
                    .filter(entry -> entry.getName().startsWith("xl/worksheets/sheet"))
                    .toList();
            assertThat(sheets).hasSizeGreaterThan(10);
            for (ZipEntry sheet : sheets) {
                assertThat(new String(zip.getInputStream(sheet).readAllBytes(), StandardCharsets.UTF_8))
                        .as(sheet.getName())
                        .containsPattern("<oddHeader>[^<]*Nothing is to be built from this plan");
            }
        }
    }

    private static String text(PDDocument pdf, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(pdf).replaceAll("\\s+", " ");
    }
}
