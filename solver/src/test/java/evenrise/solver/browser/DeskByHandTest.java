package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The desk worked by mouse, by keyboard alone and on a phone's size. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskByHandTest {
    private static final int MOST_TABS = 60;

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void openADesk() {
        browser = new Browser();
        window = DeskWindow.on(browser, "meridian-hall", folder);
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    @BeforeEach
    void turnToThePlan() {
        browser.window(1280, 900);
        window.turnTo("plan", ".panel");
    }

    /** Each test leaves the desk as it found it. */
    @AfterEach
    void takeEverythingBack() {
        window.takeEverythingBack();
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void aLoadIsDraggedToAFreeSlotAndTheFiguresFollow() {
        WebElement from = window.slot("amp-left", 1);
        WebElement to = window.slot("amp-left", 38);

        browser.hand().clickAndHold(from).moveByOffset(12, 3).perform();
        browser.until("document.querySelectorAll('.cell.fits').length > 0");
        browser.hand().moveToElement(to).release().perform();

        window.untilSaid("front-fill is at amp-left, slot 38");
        assertThat(window.slot("amp-left", 38).getDomAttribute("data-load")).isEqualTo("front-fill");
        assertThat(browser.text("#figures")).contains("Rules", "all kept");
    }

    @Test
    void aLoadPutWhereARuleBreaksIsShownInRedWordsWithTheRule() {
        browser.hand()
                .clickAndHold(window.slot("amp-left", 1))
                .moveByOffset(12, 3)
                .perform();
        browser.until("document.querySelectorAll('.cell.fits').length > 0");
        browser.hand().moveToElement(window.output("left-20", 5)).release().perform();

        window.untilSaid("front-fill is at left-20, output 5");
        assertThat(browser.text("#figures .bad")).contains("broken");
        window.turnTo("why", ".broken li");
        assertThat(window.texts(".broken li")).anyMatch(each -> each.contains("front-fill"));
    }

    @Test
    void aLoadIsMovedByTheKeyboardAlone() {
        browser.script("document.getElementById('work').focus()");
        for (int tab = 0; tab < MOST_TABS && browser.focused().getDomAttribute("data-load") == null; tab++) {
            browser.press(Keys.TAB);
        }
        assertThat(browser.focused().getDomAttribute("data-load")).isEqualTo("front-fill");

        browser.press(Keys.ENTER);
        browser.until("document.querySelectorAll('.cell.fits').length > 0");
        browser.press(Keys.END, Keys.ARROW_UP);
        window.untilSaid("amp-left, slot 46: breaks nothing; objective");
        browser.press(Keys.ENTER);

        window.untilSaid("front-fill is at amp-left, slot 46");
        browser.hand().keyDown(Keys.CONTROL).sendKeys("z").keyUp(Keys.CONTROL).perform();
        window.untilSaid("Taken back.");
        assertThat(window.slot("amp-left", 1).getDomAttribute("data-load")).isEqualTo("front-fill");
    }

    @Test
    void escapeLetsGoAndNothingIsMoved() {
        window.slot("amp-left", 1).click();
        window.button("Pick up").click();
        browser.until("document.querySelectorAll('.cell.fits').length > 0");

        browser.press(Keys.ESCAPE);

        window.untilSaid("Nothing was moved.");
        assertThat(browser.count(".cell.fits")).isZero();
        assertThat(browser.element("#undo").isEnabled()).isFalse();
    }

    @Test
    void onAPhoneALoadIsTappedPickedUpAndPutDownByATap() {
        browser.window(390, 800);
        window.slot("amp-left", 1).click();
        window.button("Pick up").click();
        browser.until("document.querySelectorAll('.cell.fits').length > 0");

        browser.script("arguments[0].scrollIntoView({ block: 'center' })", window.slot("amp-left", 38));
        window.slot("amp-left", 38).click();

        window.untilSaid("front-fill is at amp-left, slot 38");
        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(390L);
    }

    @Test
    void aBoardIsSetToAnotherDelayByTheKeyboardInItsLane() {
        window.turnTo("time", "[data-lane=left-8]");
        String before = browser.element("[data-lane=left-8]").getDomAttribute("aria-valuetext");

        browser.script("document.querySelector('[data-lane=left-8]').focus()");
        browser.press(Keys.ARROW_RIGHT);

        window.untilSaid("left-8 starts after");
        assertThat(browser.element("[data-lane=left-8]").getDomAttribute("aria-valuetext"))
                .isNotEqualTo(before);
    }

    @Test
    void aCellIsEditedAndTheFigureFollows() {
        window.turnTo("loads", ".grid .body .row");
        browser.until("document.querySelector('[data-c=\"7\"]')");

        window.click("[data-r='0'][data-c='7']");
        browser.press("2,5", Keys.ENTER);

        window.untilSaid("1 cell taken in.");
        assertThat(window.texts("[data-r='0'][data-c='7']")).containsExactly("2.5");
    }

    @Test
    void whatDoesNotFitStaysInItsCellWithTheCureAndTheRestIsTakenIn() {
        window.turnTo("loads", ".grid .body .row");
        browser.until("document.querySelector('[data-c=\"7\"]')");

        window.click("[data-r='0'][data-c='7']");
        browser.script("const given = new DataTransfer(); given.setData('text/plain', '2.5\\t1.1\\nmany\\t1.2');"
                + "document.querySelector('.grid').dispatchEvent(new ClipboardEvent('paste',"
                + " { clipboardData: given, bubbles: true, cancelable: true }))");

        browser.until(
                "document.querySelector('[aria-invalid=true]') && document.querySelector('[data-r=\"1\"][data-c=\"8\"]').textContent === '1.2'");
        assertThat(window.texts("[aria-invalid=true]")).containsExactly("many");
        window.click("[aria-invalid=true]");
        assertThat(browser.text("#cure")).contains("'many', expected a number", "not in the file yet");
        browser.press("3", Keys.ENTER);
        browser.until("!document.querySelector('[aria-invalid=true]')");
    }

    @Test
    void valuesAreFilledDown() {
        window.turnTo("loads", ".grid .body .row");
        browser.until("document.querySelector('[data-c=\"7\"]')");
        window.click("[data-r='0'][data-c='7']");

        browser.hand()
                .keyDown(Keys.SHIFT)
                .sendKeys(Keys.ARROW_DOWN, Keys.ARROW_DOWN, Keys.ARROW_DOWN)
                .keyUp(Keys.SHIFT)
                .keyDown(Keys.CONTROL)
                .sendKeys("d")
                .keyUp(Keys.CONTROL)
                .perform();

        window.untilSaid("3 cells taken in.");
        assertThat(window.texts("[data-r='3'][data-c='7']")).containsExactly("1.6");
    }

    @Test
    void aSearchRunsBesideIsTakenAndTakenBack() {
        window.turnTo("search", "#begin");
        browser.element("#seconds").clear();
        browser.element("#seconds").sendKeys("1");

        browser.element("#begin").click();
        browser.until("document.querySelector('.searching').dataset.state === 'found'");
        browser.element("#take").click();

        window.untilSaid("Taken: objective");
    }
}
