package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.Keys;

/**
 * Every view of the desk fits its window, complains of nothing, has no barrier that a checker sees, and is kept as a picture
 * for eyes.
 */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskPicturesTest {
    private static final Path FIGURES = Path.of("../docs/figures");

    private static final String LIST = "Qty\tName\tRoom\tWatts\tKlimbim\n12\tPower amplifier\tRack room\t800\tbig\n"
            + "1\tUPS 1500 VA\tRack room\t900\tsmall\n4\tFollow spot\tBalcony\tTBC\tsmall\n";

    private static final String READINGS =
            "load,idle_a,running_a,date\nnet-core-a,1.5,,2026-03-14\nfoh-engine,2.9,3.1,2026-03-14\n"
                    + "dsp-fill,0,,2026-03-14\nmon-engine,6.9,,2026-03-14\nclock-a,0.41,,2026-03-14\n";

    private enum View {
        LISTS("loads", ".grid .body .row", 1280, "light"),
        PLAN("plan", ".panel", 1440, "light"),
        PLAN_DARK("plan", ".panel", 1440, "dark"),
        PLAN_NARROW("plan", ".panel", 390, "light"),
        TIME("time", "svg.lanes", 1280, "light"),
        SEARCH("search", "#begin", 1280, "light"),
        QUESTIONS("why", "#answer", 1280, "light"),
        SUPPOSE("suppose", ".supposing .out table", 1280, "light"),
        EVENTS("events", ".part-list tbody tr", 1280, "light"),
        MEASURED("measured", "#site-files", 1280, "light"),
        INTAKE("loads", ".intake", 1280, "light"),
        TREE("tree", ".trunk .point", 1280, "light"),
        SUPPLY("loads", ".grid .body .row", 1280, "dark"),
        CHANCE("events", "#draw-trials", 1280, "dark"),
        MAILED("documents", "#mail", 390, "light"),
        DOCUMENTS("documents", "#draw", 1280, "light"),
        PORTFOLIO("portfolio", ".portfolio tbody tr", 1280, "light"),
        KEPT("kept", "table", 1280, "light");

        private final String hash;
        private final String part;
        private final int width;
        private final String scheme;

        View(String hash, String part, int width, String scheme) {
            this.hash = hash;
            this.part = part;
            this.width = width;
            this.scheme = scheme;
        }

        private String file() {
            return "desk-" + name().toLowerCase(Locale.ROOT).replace('_', '-') + ".png";
        }
    }

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void openADesk() {
        browser = new Browser();
        window = DeskWindow.on(browser, "meridian-hall", folder);
        SmallPortfolio.in(window.folder.resolve("studio"));
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    private void sends(String path, String body) {
        browser.scriptThatWaits(
                "const done = arguments[2]; fetch(arguments[0], { method: 'POST', body: arguments[1],"
                        + " headers: { 'Content-Type': 'application/json' } }).then(done, done)",
                path,
                body);
    }

    private void further(String list, String part) {
        browser.script(
                "const choice = document.getElementById('further'); choice.value = arguments[0];"
                        + "choice.dispatchEvent(new Event('change', { bubbles: true }))",
                list);
        browser.until("document.querySelector('" + part + "')");
    }

    @ParameterizedTest
    @EnumSource(View.class)
    void fitsItsWindow(View view) throws IOException {
        browser.window(view.width, 900);
        browser.media("screen", view.scheme, "reduce");
        window.turnTo(view.hash, view.part);
        if (view == View.PLAN) {
            browser.script("document.querySelector('.panel .cell.taken').click()");
            window.button("Pick up").click();
            browser.until("document.querySelector('.cell.fits')");
        }
        if (view == View.SUPPOSE) {
            window.click("#room");
            window.click("#play");
            browser.until("document.querySelector('#moment')");
            browser.until("document.querySelectorAll('.supposing .out')[0].firstChild");
        }
        if (view == View.MEASURED) {
            browser.until("document.querySelector('.measured').dataset.told");
            browser.script("document.getElementById('pasted-readings').value = arguments[0]", READINGS);
            browser.script("document.getElementById('read-pasted').click()");
            browser.until(
                    "document.querySelector('.measured').dataset.state === 'open' && document.querySelector('.differences')");
            browser.script("document.querySelector('.verdict').scrollIntoView()");
        }
        if (view == View.INTAKE) {
            browser.script(
                    "document.querySelector('.intake').open = true;"
                            + "document.getElementById('pasted').value = arguments[0]",
                    LIST);
            window.click("#read-list");
            browser.until("document.querySelector('.texts')");
        }
        if (view == View.SUPPLY) {
            further("supply", ".form");
        }
        if (view == View.QUESTIONS) {
            window.button("What makes the peak?").click();
            browser.until("document.getElementById('answer').textContent.length > 100");
        }
        if (view == View.SEARCH) {
            browser.script("document.getElementById('seconds').value = 2");
            window.click("#begin");
            browser.until("document.querySelector('.searching').dataset.state === 'found'");
        }
        if (view == View.EVENTS) {
            window.click(".part-list tbody tr:nth-child(2) button");
        }
        if (view == View.CHANCE) {
            browser.script("document.getElementById('trials').value = 500");
            window.click("#draw-trials");
            browser.until("document.querySelector('.chance').dataset.trials === '500'");
            browser.script("document.querySelector('.chance').scrollIntoView()");
        }
        if (view == View.MAILED) {
            browser.until("document.getElementById('doc-date').value !== ''");
            browser.script("document.getElementById('doc-date').value = '2031-05-06'");
            window.click("#mail");
            browser.until("document.querySelector('.mailed a')");
            browser.script("document.querySelector('.documents').scrollIntoView()");
        }
        if (view == View.DOCUMENTS) {
            browser.until("document.getElementById('doc-date').value !== ''");
            browser.script(
                    "document.getElementById('doc-date').value = '2031-05-06'; document.querySelectorAll('[name=kind]').forEach(each => { each.checked = each.value === 'pdf'; });"
                            + "document.querySelectorAll('[name=section]').forEach(each => { each.checked = ['schedules', 'drawings'].includes(each.value); })");
            window.click("#draw");
            browser.until("document.querySelectorAll('.leaf').length > 4");
            window.click(".leaf:nth-child(3)");
            browser.until(
                    "document.getElementById('large').complete && [...document.querySelectorAll('.leaf img')].slice(0, 3).every(each => each.complete)");
            browser.script("document.querySelector('.drawn').scrollIntoView()");
        }
        if (view == View.PORTFOLIO) {
            browser.script("document.querySelector('#lots tbody tr:nth-child(2) button').click()");
            browser.until("document.querySelector('.portfolio .box table')");
        }
        if (view == View.KEPT) {
            sends("/api/branches/keep", "{\"name\": \"as found\"}");
            sends("/api/move", "{\"load\": \"front-fill\", \"panel\": \"amp-left\", \"slot\": 38}");
            browser.until("document.querySelectorAll('.kept tbody tr').length === 2");
            window.click("#beside");
            browser.until("document.querySelector('.both caption')");
        }
        byte[] picture = browser.picture();
        browser.press(Keys.ESCAPE);
        browser.script("document.querySelectorAll('.intake').forEach(each => { each.open = false; })");
        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.write(FIGURES.resolve(view.file()), picture);
        }

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo((long) view.width);
        assertThat(browser.complaints()).isEmpty();
        assertThat(window.barriers()).isEmpty();
        assertThat(FIGURES.resolve(view.file())).exists();
    }
}
