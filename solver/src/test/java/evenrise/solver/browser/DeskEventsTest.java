package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
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
import org.openqa.selenium.WebElement;

/** A script put together on its axis and played, by mouse, by keyboard alone and on a phone's size. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskEventsTest {
    private static final int MOST_TABS = 80;

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
    void turnToTheEvents() {
        browser.window(1280, 900);
        browser.script("location.hash = '#plan'");
        browser.until("document.querySelector('.panel')");
        window.turnTo("events", ".happening");
        browser.until("document.querySelectorAll('.part-list tbody tr').length > 0");
    }

    @AfterEach
    void nothingIsComplainedOf() {
        assertThat(browser.complaints()).isEmpty();
    }

    private void plays(Runnable deed) {
        Object before = browser.script("return document.querySelector('.events').dataset.played");
        deed.run();
        browser.until("document.querySelector('.events').dataset.played !== '" + before + "'");
    }

    private long happenings() {
        return browser.count(".happening");
    }

    private String marks(int row) {
        return browser.element(".happening[data-row='" + row + "']").getDomAttribute("aria-valuetext");
    }

    @Test
    void aClickIntoALaneLetsSomethingHappenThereAndADragMovesIt() {
        long before = happenings();
        WebElement lane = browser.element(".field[data-lane=feeds]");

        plays(() -> browser.hand().moveToElement(lane, 200, 0).click().perform());

        assertThat(happenings()).isEqualTo(before + 1);
        assertThat(window.texts(".part-list tbody tr")).anyMatch(each -> each.contains("trips"));
        long row = (Long)
                browser.script(
                        "return Number([...document.querySelectorAll('.happening')].find(each => each.getAttribute('aria-label').includes('feeder trips')).dataset.row)");
        String was = marks((int) row);
        plays(() -> browser.hand()
                .clickAndHold(browser.element(".happening[data-row='" + row + "'] path"))
                .moveByOffset(-60, 0)
                .release()
                .perform());
        assertThat(window.texts(".happening title")).doesNotContain(was);
        plays(
                () -> browser.script(
                        "[...document.querySelectorAll('.script tbody tr')].find(each => each.querySelector('select').value === 'trip').querySelector('button').click()"));
        assertThat(happenings()).isEqualTo(before);
    }

    @Test
    void findingsAndPartsLeadToTheirMoments() {
        window.click(".part-list tbody tr:nth-child(2) button");

        String first = window.texts(".part-list tbody tr:nth-child(2) td").get(0);
        assertThat(browser.text("#now")).startsWith(first + " s:");
        assertThat(window.texts(".mini figcaption span"))
                .anyMatch(each -> each.matches("[1-9][0-9]* of [0-9]+ closed"));
        long on = browser.count(".mini-slots .on");
        assertThat(on).isPositive();
        window.click("#script-back");
        assertThat(browser.text("#now"))
                .doesNotStartWith(first + " s: "
                        + window.texts(".part-list tbody tr:nth-child(2) td").get(1));
    }

    @Test
    void thePlayedMomentsAreThoseOfEveryBreakerAtThePanelThatIsChosen() {
        long supply = (Long) browser.script("return document.querySelectorAll('.stem').length");
        plays(() -> window.choose("#script-node", "hall"));

        assertThat(browser.text(".part-list caption")).contains("hall");
        assertThat(supply).isPositive();
        assertThat(browser.count(".script-axis .limit")).isLessThanOrEqualTo(1);
        plays(() -> window.choose("#script-node", "supply"));
    }

    @Test
    void aScriptIsPutTogetherByTheKeyboardAloneAndKept() {
        browser.script("document.getElementById('work').focus()");
        tabTo(".happening[data-row='1']");
        plays(() -> browser.press(Keys.ARROW_RIGHT));
        assertThat(marks(1)).doesNotContain("at rest");
        tabTo(".happening[data-row='3']");
        long before = happenings();
        plays(() -> browser.press(Keys.DELETE));
        assertThat(happenings()).isEqualTo(before - 1);
        tabTo("#script-name");
        browser.press("bad evening");
        tabTo("#script-keep");
        browser.press(Keys.ENTER);
        window.untilSaid("Kept as 'bad evening.script.json'");
        assertThat(window.folder.resolve("bad evening.script.json")).content().contains("\"mains\"");
        browser.until("document.getElementById('script-kept').value === 'bad evening'");
        plays(() -> window.click("#script-open"));
        assertThat(happenings()).isEqualTo(before - 1);
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
    void chanceStandsBesideTheEnvelopeOnOneScale() {
        browser.script("document.getElementById('trials').value = 50");
        window.click("#draw-trials");
        browser.until("document.querySelector('.chance').dataset.trials === '50'");

        assertThat(browser.count(".chance .fan")).isEqualTo(3);
        assertThat(window.texts(".chance svg text"))
                .anyMatch(each -> each.startsWith("P95 "))
                .anyMatch(each -> each.startsWith("envelope "));
        assertThat(window.texts(".chance tbody th")).contains("supply", "hall");
        assertThat(browser.text(".chance caption")).contains("50 switch-ons, seed 1");
        window.choose("#trials-node", "hall");
        browser.until("document.querySelector('.chance svg').getAttribute('aria-label').includes('hall')");
    }

    @Test
    void fitAPhoneWithoutABarrier() {
        browser.window(390, 800);

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(390L);
        assertThat(window.barriers()).isEmpty();
        long before = happenings();
        plays(() -> window.click("#script-add"));
        assertThat(happenings()).isEqualTo(before + 1);
        plays(() -> browser.script("document.querySelector('.script tbody tr:last-child button').click()"));
    }
}
