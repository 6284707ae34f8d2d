package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A portfolio looked at, and its plans opened onto the desk, by mouse, by keyboard alone and on a phone's size. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskPortfolioTest {
    private static final int MOST_TABS = 60;

    @TempDir
    private static Path planned;

    @TempDir
    private Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void planIt() {
        SmallPortfolio.in(planned);
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    @BeforeEach
    void openADesk() throws IOException {
        try (Stream<Path> all = Files.walk(planned)) {
            for (Path each : all.filter(Files::isRegularFile).toList()) {
                Path copy = folder.resolve(planned.relativize(each));
                Files.createDirectories(copy.getParent());
                Files.copy(each, copy);
            }
        }
        browser.window(1280, 900);
        window = DeskWindow.onFolder(browser, folder);
        window.turnTo("portfolio", "#lots tbody tr");
        browser.until("document.querySelector('.portfolio').dataset.lots === '2'");
    }

    @AfterEach
    void closeTheDesk() {
        browser.script("location.href = 'about:blank'");
        window.close();
        assertThat(browser.complaints()).isEmpty();
    }

    private void opensLot(String variant) {
        browser.script(
                "const row = [...document.querySelectorAll('#lots tbody tr')].find(each => each.children[1].textContent === arguments[0]);"
                        + "const button = row.querySelector('button'); if (button.getAttribute('aria-expanded') !== 'true') button.click()",
                variant);
        browser.until("document.querySelectorAll('.portfolio .box table tbody tr').length === 2");
    }

    @Test
    void everyVariantHasItsBestPlanAndItsSeedsAsMarks() {
        assertThat(window.texts("#lots tbody td:nth-child(2)")).contains("as-is", "light");
        assertThat(browser.count("#lots svg circle")).isBetween(2L, 4L);
        assertThat(browser.count(".portfolio figure svg circle")).isEqualTo(2);
        browser.element("#lot-filter").sendKeys("light");
        browser.until("document.querySelectorAll('#lots tbody tr').length === 1");
        browser.element("#lot-filter").sendKeys(Keys.BACK_SPACE.toString().repeat("light".length()));
        browser.until("document.querySelectorAll('#lots tbody tr').length === 2");
        window.click("#lots thead th:nth-child(6) button");
        assertThat(browser.element("#lots thead th:nth-child(6)").getDomAttribute("aria-sort"))
                .isEqualTo("ascending");
        window.click("#lots thead th:nth-child(6) button");
    }

    @Test
    void aPlanOfTheProjectOnTheDeskIsOpenedAndTakenBack() {
        opensLot("as-is");
        String objective =
                window.texts(".portfolio .box tbody tr:nth-child(2) td").get(0);

        window.click("[aria-label='Open seed 2']");

        window.untilSaid("It is a plan of the project on the desk");
        assertThat(browser.text("#figures").replaceAll("\\s+", " ")).contains("Objective " + objective);
    }

    @Test
    void aPlanOfAnotherStateOfTheProjectIsOpenedWithItOnceThatIsSaid() {
        opensLot("light");
        String objective =
                window.texts(".portfolio .box tbody tr:nth-child(1) td").get(0);
        Object revision = browser.script("return document.documentElement.dataset.revision");

        window.click("[aria-label='Open seed 1']");
        browser.until("document.querySelector('#confirm-open')");
        assertThat(browser.script("return document.documentElement.dataset.revision"))
                .isEqualTo(revision);
        window.click("#confirm-open");

        window.untilSaid("The plan and the project that it is of");
        assertThat(browser.text("#figures").replaceAll("\\s+", " ")).contains("Objective " + objective);
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
    void aPlanIsOpenedByTheKeyboardAlone() {
        browser.script("document.getElementById('work').focus()");
        tabTo("#lots tbody tr:nth-child(1) button");
        if ("false".equals(browser.focused().getDomAttribute("aria-expanded"))) {
            browser.press(Keys.ENTER);
        }
        browser.until("document.querySelector('[aria-label^=\"Open seed\"]')");
        browser.script("document.getElementById('work').focus()");
        tabTo("[aria-label^='Open seed']");
        browser.press(Keys.ENTER);
        window.untilSaid("lies there now");
    }

    @Test
    void fitsAPhoneWithoutABarrier() {
        browser.window(360, 740);
        opensLot("light");

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(360L);
        assertThat(window.barriers()).isEmpty();
    }
}
