package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** Documents drawn at the desk, looked at sheet by sheet and table by table, and written as they were seen. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskDocumentsTest {
    private static final int MOST_TABS = 120;

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void openADesk() {
        browser = new Browser();
        window = DeskWindow.asBuilt(browser, "lantern-yard", folder);
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    @BeforeEach
    void turnToTheDocuments() {
        browser.window(1280, 900);
        window.turnTo("documents", "#draw");
        browser.until("document.getElementById('doc-date').value !== ''");
        browser.script("document.getElementById('doc-against').value = '';"
                + "document.querySelector('[data-look=sheets]').click()");
        choosesSections("schedules");
    }

    @AfterEach
    void nothingIsComplainedOf() {
        window.takeEverythingBack();
        assertThat(browser.complaints()).isEmpty();
    }

    private void draws(Runnable deed) {
        Object before = browser.script("return document.querySelector('.documents').dataset.drawn || '0'");
        deed.run();
        browser.until("Number(document.querySelector('.documents').dataset.drawn) > " + before);
    }

    private void chooses(String... kinds) {
        browser.script(
                "document.querySelectorAll('[name=kind]').forEach(each => { each.checked = arguments[0].includes(each.value); })",
                List.of(kinds));
    }

    private void choosesSections(String... words) {
        browser.script(
                "document.querySelectorAll('[name=section]').forEach(each => { each.checked = arguments[0].length === 0 || arguments[0].includes(each.value); })",
                List.of(words));
    }

    private void write(String selector, String text) {
        browser.element(selector).clear();
        browser.element(selector).sendKeys(text);
    }

    private Path written(String name) {
        return window.folder.resolve("documents").resolve(name);
    }

    private static String text(Path pdf) {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everySheetIsSeenThenWrittenAsItWasSeen() {
        chooses("html", "pdf", "csv");
        choosesSections();
        write("#doc-revision", "B7");
        browser.script("document.getElementById('title-block').open = true");
        write("#title-client", "Riverside Council");

        draws(() -> window.click("#draw"));
        browser.until("document.getElementById('large').naturalWidth === 1400");
        long pages = browser.count(".leaf");
        assertThat(pages).isGreaterThan(8);
        assertThat(browser.text("#place")).contains("Cover", "page 1 of " + pages);
        window.click("#page-next");
        browser.until("document.getElementById('place').textContent.includes('page 2 of')");
        window.click(".leaf:nth-child(4)");
        browser.until("document.getElementById('place').textContent.includes('page 4 of')");

        window.click("[data-look=page]");
        browser.until("document.querySelector('.framed iframe').dataset.loaded");
        assertThat(browser.framed(".framed iframe", By.cssSelector("h1"))).contains("Lantern Yard");

        window.click("[data-look=tables]");
        browser.until("document.querySelector('.tabled tbody tr')");
        window.choose("#table-file", "landing.csv");
        browser.until("document.querySelectorAll('.tabled tbody tr').length > 10");

        window.click("#write");
        window.untilSaid("written to 'documents'");
        assertThat(text(written("plan-a4.pdf"))).contains("B7", "Riverside Council");
        assertThat(written("landing.csv")).exists();
        assertThat(written("plan.xlsx")).doesNotExist();
        assertThat(window.folder.resolve("title-block.json")).content().contains("Riverside Council");
        assertThat(window.texts(".written li"))
                .anyMatch(each -> each.startsWith("plan.html"))
                .hasSize((int) browser.count(".written li"));
    }

    @Test
    void sectionsThatAreNotChosenAreNotPrinted() {
        chooses("pdf");
        choosesSections("schedules", "landing");
        draws(() -> window.click("#draw"));
        long all = browser.count(".leaf");

        choosesSections("landing");
        draws(() -> window.click("#draw"));

        assertThat(browser.count(".leaf")).isLessThan(all);
        assertThat(window.texts(".leaf span"))
                .allMatch(each -> each.contains("landing list") || each.contains("Cover"));
    }

    @Test
    void changesAgainstAnIssuedPlanAreMarkedAndTold() {
        chooses("pdf", "html");
        draws(() -> window.click("#draw"));
        write("#keep-as", "issued A");
        window.click("#write");
        window.untilSaid("the plan is kept as 'issued A'");
        write("#keep-as", "");
        browser.scriptThatWaits(
                "const done = arguments[0]; fetch('/api/move', { method: 'POST', headers: { 'Content-Type': 'application/json' },"
                        + " body: '{\"load\": \"main-6\", \"panel\": \"hall\", \"slot\": 2}' }).then(done, done)");
        browser.until("document.getElementById('drawn-state').textContent.includes('draw anew')");
        assertThat(browser.element("#write").isEnabled()).isFalse();

        window.choose("#doc-against", "issued A");
        draws(() -> window.click("#draw"));
        window.click("[data-look=anew]");

        assertThat(window.texts(".anew tbody tr"))
                .anyMatch(each -> each.contains("Panel schedule") && each.contains("hall"));
        write("#into", "issue B");
        window.click("#write");
        window.untilSaid("written to 'issue B'");
        write("#into", "documents");
        assertThat(text(window.folder.resolve("issue B").resolve("plan-a4.pdf")))
                .contains("\u25b3");
    }

    @Test
    void labelsAndSiteSheetsInAnotherLanguageAreSeenAsWell() {
        chooses("pdf");
        browser.script("document.getElementById('labelling').open = true");
        write("#labels-cable", "a4-63.5x38.1");
        window.choose("#doc-language", "fr");
        draws(() -> window.click("#draw"));

        assertThat(window.texts("#paper option")).contains("labels-cable.pdf", "site-fr-a4.pdf");
        window.choose("#paper", "labels-cable.pdf");
        browser.until("document.getElementById('place').textContent.startsWith('labels-cable')");
        browser.until("document.getElementById('large').complete && document.getElementById('large').naturalWidth > 0");

        write("#labels-cable", "a4-none");
        window.click("#draw");
        window.untilSaid("expected a stock");
        write("#labels-cable", "");
        browser.element("#labels-cable").clear();
        window.choose("#doc-language", "en");
        assertThat(browser.complaints()).allMatch(each -> each.contains("422"));
    }

    @Test
    void drawingsForOtherProgramsAreSeenFromTheirFiles() {
        chooses("dxf");
        draws(() -> window.click("#draw"));
        window.click("[data-look=tables]");

        browser.until("document.querySelector('.tabled img')");
        browser.until(
                "document.querySelector('.tabled img').complete && document.querySelector('.tabled img').naturalWidth > 500");
        assertThat(window.texts("#table-file option")).isNotEmpty().allMatch(each -> each.endsWith(".dxf"));
    }

    @Test
    void thePageToMailIsMadeWithOneClickAndWhatComesBackIsTakenIn() throws IOException {
        window.click("#mail");
        window.untilSaid("ready to be mailed");
        Path page = window.folder.resolve("mailed/plan.html");
        assertThat(page).exists();
        assertThat(window.texts(".mailed a")).containsExactly("Download plan.html", "Download readings.html");
        assertThat(
                        browser.scriptThatWaits(
                                "const done = arguments[0]; fetch(document.querySelector('.mailed a').href).then((a) => a.text()).then((text) => done(text.length))"))
                .isEqualTo((long) Files.readString(page).length());
        assertThat(browser.element(".mailed a").getDomAttribute("download")).isEqualTo("Lantern-Yard-A-plan.html");

        Path back = folder.resolve("back.json");
        try (Browser elsewhere = new Browser()) {
            elsewhere.open(page);
            Files.writeString(back, TriedPageTest.triedMoves(elsewhere));
        }
        browser.element(".documents .returned").sendKeys(back.toAbsolutePath().toString());
        window.untilSaid("are on the desk");

        browser.element(".documents .returned").sendKeys(back.toAbsolutePath().toString());
        window.untilSaid("kept as 'mailed A'");
        assertThat(browser.complaints()).allMatch(each -> each.contains("422"));
    }

    /** Presses Tab until what has the focus is such. */
    private void tabTo(String selector) {
        for (int tab = 0; tab < MOST_TABS; tab++) {
            if (Boolean.TRUE.equals(browser.script("return document.activeElement.matches(arguments[0])", selector))) {
                return;
            }
            browser.press(Keys.TAB);
        }
        throw new AssertionError("no Tab leads to " + selector);
    }

    @Test
    void areDrawnTurnedOverAndWrittenByTheKeyboardAlone() {
        chooses("pdf");
        browser.script("document.getElementById('work').focus()");
        tabTo("#draw");
        draws(() -> browser.press(Keys.ENTER));
        tabTo(".reader .scroll");
        browser.press(Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_LEFT);
        assertThat(browser.text("#place")).contains("page 1 of");
        browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        assertThat(browser.text("#place")).contains("page 3 of");
        tabTo("#write");
        browser.press(Keys.ENTER);
        window.untilSaid("written to 'documents'");
    }

    @Test
    void fitAPhone() {
        browser.window(360, 740);
        chooses("html", "pdf", "csv");
        draws(() -> window.click("#draw"));
        for (String look : List.of("sheets", "page", "tables", "anew")) {
            window.click("[data-look=" + look + "]");

            assertThat(browser.script("return document.documentElement.scrollWidth"))
                    .as(look)
                    .isEqualTo(360L);
            assertThat(window.barriers()).as(look).isEmpty();
        }
    }

    @Test
    void aFileOfSomebodyElseIsNotOverwritten() throws IOException {
        Path other = window.folder.resolve("site set");
        Files.createDirectories(other);
        Files.writeString(other.resolve("plan.html"), "mine");
        chooses("html");
        draws(() -> window.click("#draw"));
        write("#into", "site set");
        window.click("#write");

        window.untilSaid("holds files that no earlier report wrote");
        assertThat(other.resolve("plan.html")).content().isEqualTo("mine");
        write("#into", "documents");
        assertThat(browser.complaints()).allMatch(each -> each.contains("422"));
    }
}
