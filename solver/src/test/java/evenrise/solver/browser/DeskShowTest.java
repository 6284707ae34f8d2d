package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** From a messy list of 120 pieces to a plan that was had in the hand, and all the way back. */
@Tag("slow")
@Needs({"chromium", "chromedriver"})
class DeskShowTest {
    /** 120 pieces: 48 + 30 + 24 + 12 + 4 + 2. Parted by semicolons, so that it can be typed, too. */
    private static final String LIST = "Qty;Name;Room;Watts;Klimbim\n"
            + "48;Power amplifier;Rack room;800;big\n30;Moving light;Bridge;450;small\n24;DSP unit;Rack room;60;small\n"
            + "12;Video server;Control;600;big\n4;Follow spot;Balcony;TBC;small\n2;UPS 1500 VA;Rack room;900;big\n";

    private static final int MOST_TABS = 90;

    @TempDir
    private Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeEach
    void openAnEmptyDesk() {
        browser = new Browser();
        window = DeskWindow.onFolder(browser, folder);
    }

    @AfterEach
    void closeIt() {
        window.close();
        browser.close();
    }

    private void untilChanged(Runnable deed) {
        Object revision = browser.script("return document.documentElement.dataset.revision");
        deed.run();
        browser.until("document.documentElement.dataset.revision !== '" + revision + "'");
    }

    private void answer(String of, String about, String words) {
        browser.script(
                "const input = document.querySelector(`[data-of=\"${arguments[0]}\"][data-about=\"${arguments[1]}\"]`);"
                        + "input.value = arguments[2]; input.dispatchEvent(new Event('change', { bubbles: true }))",
                of,
                about,
                words);
    }

    private void choose(String select, String value) {
        browser.script(
                "const choice = document.querySelector(arguments[0]); choice.value = arguments[1];"
                        + "choice.dispatchEvent(new Event('change', { bubbles: true }))",
                select,
                value);
    }

    private void searches(String button) {
        browser.element("#seconds").clear();
        browser.element("#seconds").sendKeys("3");
        browser.element(button).click();
        browser.until("document.querySelector('.searching').dataset.state === 'found'");
    }

    @Test
    void isWalkedByMouse() {
        pastesAndAnswers();
        laysOutTheTree();
        window.turnTo("search", "#begin");
        searches("#begin");
        untilChanged(() -> browser.element("#take").click());
        dragsTwoLoads();
        retimesABoard();
        pinsAPanelAndSearchesAround();
        explains();
        comparesTwo();
        assertThat(window.barriers()).isEmpty();
        window.takeEverythingBack();

        window.turnTo("plan", ".empty");
        assertThat(browser.complaints()).isEmpty();
    }

    private void pastesAndAnswers() {
        window.turnTo("loads", ".intake");
        browser.script("document.querySelector('.intake').open = true");
        browser.script("document.getElementById('pasted').value = arguments[0]", LIST);
        window.click("#read-list");
        browser.until("document.querySelector('.texts')");
        assertThat(window.texts(".columns tr.open th")).containsExactly("Klimbim");
        assertThat(window.texts(".texts tr.asked")).anyMatch(each -> each.contains("UPS 1500 VA"));
        assertThat(window.texts(".texts tr.guessed")).isNotEmpty();
        assertThat(window.barriers()).isEmpty();

        answer("switched", "UPS 1500 VA", "no");
        answer("watts", "Follow spot", "1200 W");
        window.click("#read-again");
        browser.until("!document.querySelector('[data-of=switched]')");
        assertThat(window.texts(".texts tr.asked")).isEmpty();
        untilChanged(() -> window.click("#take-list"));
        assertThat(browser.text("#figures").replaceAll("\\s+", " ")).contains("Placed 0 of");
    }

    private void laysOutTheTree() {
        window.turnTo("tree", ".trunk .point");
        assertThat(window.barriers()).isEmpty();
        browser.element("#added-name").sendKeys("riser");
        untilChanged(() -> browser.element("#add-node").click());
        window.untilSaid("riser is fed from supply.");
        String panel = window.texts(".trunk .panel .name").get(0);
        browser.until("document.querySelector('[data-point=\"riser\"]')");
        browser.script(
                "document.querySelector('[data-point=\"' + arguments[0] + '\"]').dispatchEvent("
                        + "new MouseEvent('click', { bubbles: true }))",
                panel);
        choose("#point-under", "riser");
        untilChanged(() -> browser.element("#move").click());
        window.untilSaid(panel + " is fed from riser.");
        browser.until("document.querySelector('[data-point=\"riser\"]')");
        untilChanged(() -> browser.hand()
                .clickAndHold(point(panel))
                .moveByOffset(12, 12)
                .moveToElement(point("supply"))
                .release()
                .perform());
        window.untilSaid(panel + " is fed from supply.");
    }

    private WebElement point(String id) {
        return browser.element("[data-point=\"" + id + "\"]");
    }

    private void dragsTwoLoads() {
        window.turnTo("plan", ".panel .cell.taken");
        for (int load = 0; load < 2; load++) {
            browser.script("scrollTo(0, 0)");
            List<String> slots = window.texts(".panel .cell.free .no");
            assertThat(slots).isNotEmpty();
            browser.hand()
                    .clickAndHold(browser.element(".panel .cell.taken .id"))
                    .moveByOffset(12, 3)
                    .perform();
            browser.until("document.querySelector('.cell.fits, .cell.breaks')");
            browser.script("document.querySelector('.panel .cell.free').scrollIntoView({ block: 'center' })");
            untilChanged(() -> browser.hand()
                    .moveToElement(browser.element(".panel .cell.free"))
                    .release()
                    .perform());
            window.untilSaid(": objective ");
        }
    }

    private void retimesABoard() {
        window.turnTo("time", ".tick.moves");
        Object lane = browser.script("return document.querySelector('.tick.moves').dataset.lane");
        browser.script("document.querySelector('.tick.moves').focus()");
        untilChanged(() -> browser.press(Keys.ARROW_RIGHT));
        assertThat(lane).isNotNull();
    }

    private void pinsAPanelAndSearchesAround() {
        window.turnTo("plan", ".panel [data-part=pin]:enabled");
        untilChanged(() -> window.click(".panel [data-part=pin]:enabled"));
        window.untilSaid("Pinned: panel ");
        long pinned = browser.count(".panel .pin");
        assertThat(pinned).isPositive();
        window.turnTo("search", "#around");
        searches("#around");
        untilChanged(() -> browser.element("#take").click());
        window.untilSaid("Taken: objective");
    }

    private void explains() {
        window.turnTo("plan", ".panel .cell.taken");
        window.click(".panel .cell.taken");
        window.button("Why here?").click();
        browser.until("(document.getElementById('answer') || {}).textContent?.length > 20");
    }

    private void comparesTwo() {
        window.turnTo("kept", "#keep");
        browser.element("#kept-name").sendKeys("first");
        browser.element("#keep").click();
        browser.until("document.querySelectorAll('.kept tbody tr').length === 2");
        window.takeBack();
        browser.element("#kept-name").clear();
        browser.element("#kept-name").sendKeys("second");
        browser.element("#keep").click();
        browser.until("document.querySelectorAll('.kept tbody tr').length === 3");
        choose("#left-plan", "first");
        choose("#right-plan", "second");
        browser.element("#beside").click();
        browser.until("document.querySelector('.both caption')");
        assertThat(browser.text(".both thead")).contains("first", "second");
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

    private void goTo(String view) {
        browser.script("document.activeElement.blur(); scrollTo(0, 0)");
        tabTo("nav a[href='#" + view + "']");
        browser.press(Keys.ENTER);
        browser.until("document.body.dataset.view === '" + view + "'");
    }

    @Test
    void isWalkedByTheKeyboardAlone() {
        goTo("loads");
        tabTo(".intake summary");
        browser.press(Keys.ENTER);
        tabTo("#pasted");
        browser.press(LIST);
        tabTo("#read-list");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('.texts')");
        tabTo("[data-of=watts][data-about='Follow spot']");
        browser.press("1200 W");
        tabTo("#read-again");
        browser.press(Keys.ENTER);
        browser.until("!document.querySelector(\"[data-of=watts][data-about='Follow spot']\")");
        tabTo("#take-list");
        untilChanged(() -> browser.press(Keys.ENTER));

        goTo("tree");
        browser.until("document.querySelector('.trunk .point')");
        tabTo("#added-name");
        browser.press("riser");
        tabTo("#add-node");
        untilChanged(() -> browser.press(Keys.ENTER));

        goTo("search");
        tabTo("#seconds");
        browser.hand().keyDown(Keys.CONTROL).sendKeys("a").keyUp(Keys.CONTROL).perform();
        browser.press("3");
        tabTo("#begin");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('.searching').dataset.state === 'found'");
        tabTo("#take");
        untilChanged(() -> browser.press(Keys.ENTER));

        goTo("plan");
        browser.until("document.querySelector('.panel .cell.taken')");
        tabTo(".panel .cell.taken");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('.cell.fits, .cell.breaks')");
        browser.press(Keys.END);
        untilChanged(() -> browser.press(Keys.ENTER));
        tabTo(".panel [data-part=pin]:enabled");
        untilChanged(() -> browser.press(Keys.ENTER));
        goTo("time");
        browser.until("document.querySelector('.tick.moves')");
        tabTo(".tick.moves");
        untilChanged(() -> browser.press(Keys.ARROW_RIGHT));
        goTo("why");
        tabTo("#of-load");
        browser.press((String) browser.script("return document.querySelector('#load-ids option').value"));
        browser.press(Keys.TAB, Keys.ENTER);
        browser.until("document.getElementById('answer').textContent.length > 20");
        goTo("tree");
        while (browser.element("#undo").isEnabled()) {
            untilChanged(() -> browser.hand()
                    .keyDown(Keys.CONTROL)
                    .sendKeys("z")
                    .keyUp(Keys.CONTROL)
                    .perform());
        }
        browser.until("document.querySelector('.empty')");
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void everyViewFitsAPhoneAndHasNoBarrier() {
        pastesAndAnswers();
        browser.window(390, 800);
        for (Object view : (List<?>) browser.script(
                "return [...document.querySelectorAll('nav a')].map(each => each.getAttribute('href').slice(1))")) {
            browser.script("location.hash = '#' + arguments[0]", view);
            browser.until("document.body.dataset.view === '" + view + "' && document.querySelector('#work section')");

            assertThat(browser.script("return document.documentElement.scrollWidth"))
                    .as("%s", view)
                    .isEqualTo(390L);
            assertThat(window.barriers()).as("%s", view).isEmpty();
        }
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void twoWindowsSeeWhatEachDoes() {
        pastesAndAnswers();
        browser.anotherWindow();
        window.turnTo("tree", ".trunk .point");
        browser.element("#added-name").sendKeys("riser");
        untilChanged(() -> browser.element("#add-node").click());

        browser.firstWindow();
        browser.until("document.getElementById('undo').title.includes('riser')");
        untilChanged(() -> browser.element("#undo").click());
        browser.anotherOpenWindow();
        browser.until("document.getElementById('redo').title.includes('riser')");
        browser.until("!document.querySelector('[data-point=riser]')");
        assertThat(browser.complaints()).isEmpty();
    }
}
