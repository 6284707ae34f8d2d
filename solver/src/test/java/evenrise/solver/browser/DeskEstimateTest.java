package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.solver.desk.PricedHall;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Make-ups by price, what they leave free, and the client's page: by mouse, by keyboard alone and on a phone's size. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskEstimateTest {
    private static final int MOST_TABS = 120;
    private static final Path PICTURE = Path.of("../docs/figures/desk-estimate.png");
    private static final String USUAL = "[data-again='offer least-usual']";

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void lookByPrice() {
        browser = new Browser();
        browser.window(1280, 900);
        window = DeskWindow.onFolder(browser, PricedHall.in(folder));
        window.turnTo("estimate", "#estimate-begin");
        browser.script("document.getElementById('estimate-moves').value = 200;"
                + "document.getElementById('tries').value = 6; document.getElementById('draws').value = 20");
        window.click("#estimate-begin");
        untilDone();
    }

    private void untilDone() {
        browser.until("document.querySelector('.estimating').dataset.state === 'done'");
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    @BeforeEach
    void turnToTheEstimate() {
        browser.window(1280, 900);
        window.turnTo("estimate", "#estimate-begin");
        untilDone();
    }

    @AfterEach
    void nothingIsComplainedOf() {
        browser.script("document.querySelectorAll('.estimating [data-again^=\"offer \"]:checked')"
                + ".forEach(each => each.click())");
        assertThat(browser.complaints()).isEmpty();
    }

    private void tick(String selector) {
        browser.script("document.querySelector(arguments[0]).scrollIntoView({ block: 'center' })", selector);
        window.click(selector);
    }

    @Test
    void eachMakeUpStandsWithItsPriceAndWhatIsKnownOfIt() {
        assertThat(browser.text(".told-least")).startsWith("Least price, proven: ");
        assertThat(window.texts("tr.sound td.known").get(0)).isEqualTo("sound: a plan keeps every hard rule");
        assertThat(window.texts("td.known")).contains("not looked at");
        assertThat(browser.count("svg.strip .m-sound")).isPositive();
        assertThat(window.texts("svg.strip text")).anyMatch(each -> each.startsWith("least, proven: "));
        assertThat(window.texts(".estimating h3")).contains("What it is built up of", "What prices rest on");
        assertThat(folder.resolve("estimate/make-ups.csv")).exists();
    }

    @Test
    void lowLikelyAndHighStandWithWhatTheyDependOn() {
        assertThat(browser.text(".estimating"))
                .contains("Price where quantities are open", "(P10)", "(P50)", "(P90)", "What the price depends on");
        assertThat(window.texts(".estimating .box td")).contains("lamps");
        assertThat(browser.script("const chart = document.querySelector('.estimating img.chart');"
                        + "return chart.complete && chart.naturalWidth > 100 && chart.alt.includes('P90')"))
                .isEqualTo(true);
        assertThat(folder.resolve("estimate/draws.csv")).exists();
    }

    @Test
    void theRoomThatAMakeUpLeavesIsShownOnItsPanels() {
        tick("[data-again='room least-usual']");
        browser.until("document.querySelector('.room-left').dataset.files === 'least-usual'");

        assertThat(browser.count(".room-left .panel .cell.taken")).isEqualTo(5);
        assertThat(window.texts(".room-left .cell.room .cost")).isNotEmpty().allMatch(each -> each.startsWith("≤ "));
        assertThat(window.texts(".room-left .panel h3 span")).allMatch(each -> each.endsWith("2 asked"));
        assertThat(browser.count(".room-left .outputs .used")).isEqualTo(4);
        tick("#take-make-up");
        window.untilSaid("is on the desk");
        window.takeEverythingBack();
    }

    @Test
    void whatIsOfferedIsSeenAsTheClientWillThenWritten() throws IOException {
        tick(USUAL);
        tick("#offer-desk");
        browser.script("document.getElementById('offer-draws').value = 20");
        tick("#offer-look");
        browser.until("document.querySelector('.offering iframe')?.dataset.loaded");
        assertThat(folder.resolve("offer")).doesNotExist();
        assertThat(window.texts(".offering thead th")).containsExactly("Least price", "As on the desk");
        assertThat(window.texts(".offering tbody th"))
                .contains("Price, EUR", "Spare slots", "Floor space, m²", "Half of drawn prices at most (P50)");

        tick("#offer-write");
        window.untilSaid("Written to the folder offer");

        String drawn = (String) browser.script("return document.querySelector('.offering').dataset.drawn");
        Object seen = browser.scriptThatWaits(
                "const done = arguments[1]; fetch('/offered/' + arguments[0] + '/offer.html').then(each => each.text()).then(done)",
                drawn);
        assertThat(folder.resolve("offer/offer.html")).content().isEqualTo(seen);
        assertThat(folder.resolve("offer/offer.pdf")).exists();
        assertThat(Files.readString(folder.resolve("offer/offer.csv"))).contains("Least price,As on the desk");
        tick("#offer-desk");
        browser.script("document.getElementById('offer-draws').value = 0");
    }

    @Test
    void pricesAreTypedInPlaceAndUndoTakesThemBack() throws IOException {
        String before = Files.readString(folder.resolve("project.json"));
        browser.script("document.querySelector('.catalogue').open = true");
        browser.until("document.querySelector('.catalogue .grid .body .row')");
        int price = window.texts(".catalogue .head .cell").indexOf("price");
        tick(".catalogue .body [data-r='0'][data-c='" + price + "']");
        browser.press("777", Keys.ENTER);
        window.untilSaid("1 cell taken in");

        assertThat(folder.resolve("project.json")).content().contains("777");
        browser.until("document.querySelector('.standing').textContent.includes('have changed since')");
        window.takeEverythingBack();
        browser.until("document.querySelector('.catalogue .body [data-r=\"0\"][data-c=\"" + price
                + "\"]').textContent === '700'");
        assertThat(before).doesNotContain("777");
        browser.script("document.querySelector('.catalogue').open = false");
    }

    @Test
    void allOfItIsDoneByTheKeyboardAlone() {
        browser.script("document.getElementById('work').focus()");
        tabTo("#estimate-begin");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('.estimating').dataset.state !== 'done'");
        untilDone();
        browser.script("document.getElementById('work').focus()");
        tabTo(USUAL);
        browser.press(Keys.SPACE);
        tabTo("#offer-look");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('.offering iframe')?.dataset.loaded");
        tabTo("#offer-folder");
        browser.press(Keys.END, " 2");
        tabTo("#offer-write");
        browser.press(Keys.ENTER);
        window.untilSaid("Written to the folder offer 2");
        assertThat(folder.resolve("offer 2/offer.pdf")).exists();
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
    void fitsItsWindowAndIsKeptAsAPicture() throws IOException {
        browser.media("screen", "light", "reduce");
        browser.script("document.querySelector('.standing').scrollIntoView({ block: 'start' })");
        byte[] picture = browser.picture();
        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.write(PICTURE, picture);
        }

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(1280L);
        assertThat(window.barriers()).isEmpty();
        assertThat(PICTURE).exists();
    }

    @Test
    void fitsAPhoneWithoutABarrier() {
        browser.window(360, 800);
        tick("[data-again='room least-usual']");
        browser.until("document.querySelector('.room-left').dataset.files === 'least-usual'");
        tick(USUAL);
        tick("#offer-look");
        browser.until("document.querySelector('.offering iframe')?.dataset.loaded");

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(360L);
        assertThat(window.barriers()).isEmpty();
    }
}
