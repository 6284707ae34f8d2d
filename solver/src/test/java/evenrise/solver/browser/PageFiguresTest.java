package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Metrics;
import evenrise.model.rules.Referee;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.rendering.WorkbookFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page as a browser shows it, its print, the printed sheets and the workbook say what the plan says. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PageFiguresTest {
    @TempDir
    private Path folder;

    private Browser browser;

    @BeforeAll
    void openABrowser() {
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"meridian-hall", "lumen-theatre", "willow-chapel"})
    void agreeInEveryFormat(String dataset) throws IOException {
        DrawnPages.Planned planned = DrawnPages.of(dataset);
        PlanPage.open(browser, planned.document(), folder);
        Map<String, List<?>> shown = landingShown();
        Map<String, Row> calculated = landingOfTheWorkbook(planned);
        String printed = text(new PrintedSheets(planned.document()).on(PrintedSheets.Paper.A4));
        String printedByTheBrowser = text(browser.print());

        for (Assignment each : planned.layout().plan().assignments()) {
            if (each.onSeconds().isEmpty()) {
                continue;
            }
            double on = each.onSeconds().getAsDouble();
            List<?> row = shown.get(each.load());
            assertThat(row.get(0)).isEqualTo(each.board().orElseThrow());
            assertThat(row.get(1)).isEqualTo(Integer.toString(each.output().getAsInt()));
            assertThat(Double.parseDouble((String) row.get(6))).isCloseTo(on, within(0.005));
            assertThat(calculated
                            .get(each.load())
                            .getCellAsNumber(6)
                            .orElseThrow()
                            .doubleValue())
                    .isCloseTo(on, within(1e-9));
            assertThat(printed).contains(each.load());
            assertThat(printedByTheBrowser).contains(each.load());
        }
        Metrics metrics = Referee.judge(planned.layout()).metrics();
        for (String figure : List.of(
                String.format(Locale.ROOT, "%.1f A", metrics.peakInrushAmps()),
                String.format(Locale.ROOT, "%.2f s", metrics.durationSeconds()),
                String.format(Locale.ROOT, "%.1f A", metrics.supplyNeutralAmps()))) {
            assertThat(browser.text("#figures")).contains(figure);
            assertThat(printed).contains(figure);
            assertThat(printedByTheBrowser).contains(figure);
        }
    }

    private Map<String, List<?>> landingShown() {
        List<?> rows = (List<?>) browser.script("return Array.from(document.querySelectorAll('#landing tbody tr'),"
                + " row => Array.from(row.cells, cell => cell.textContent))");
        Map<String, List<?>> byLoad = new HashMap<>();
        rows.forEach(row -> byLoad.put((String) ((List<?>) row).get(2), (List<?>) row));
        return byLoad;
    }

    private static Map<String, Row> landingOfTheWorkbook(DrawnPages.Planned planned) throws IOException {
        Map<String, Row> rows = new HashMap<>();
        try (ReadableWorkbook workbook =
                new ReadableWorkbook(new ByteArrayInputStream(WorkbookFile.of(planned.document())))) {
            workbook.findSheet("landing").orElseThrow().read().stream()
                    .skip(1)
                    .forEach(row -> rows.put(row.getCellText(2), row));
        }
        return rows;
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }
}
