package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.solver.cli.WholeProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A newcomer follows docs/first-hour.md step by step, with searches of two seconds in the place of thirty. */
@Tag("slow")
@Needs({"chromium", "chromedriver"})
class FirstHourTest {
    private static final Path PAGE = Path.of("../docs/first-hour.md");

    @TempDir
    private Path folder;

    private DeskWindow window;
    private Browser browser;

    /** What the page tells the newcomer, word by word. */
    private static String told(String words) throws IOException {
        assertThat(Files.readString(PAGE)).contains(words);
        return words;
    }

    private void press(String words) throws IOException {
        window.button(told(words)).click();
    }

    private void undo() {
        browser.element("#undo").click();
        window.untilSaid("Taken back.");
    }

    private void search() {
        browser.element("#seconds").clear();
        browser.element("#seconds").sendKeys("2");
        browser.element("#begin").click();
        browser.until("document.querySelector('.searching').dataset.state === 'found'");
    }

    @Test
    void leadsToAPlan() throws IOException {
        try (Browser opened = new Browser();
                DeskWindow desk = DeskWindow.on(opened, told("lantern-yard"), folder)) {
            browser = opened;
            window = desk;
            looksAround();
            putsLoadsDown();
            letsItSearch();
            makesItItsOwn();
            assertThat(browser.complaints()).isEmpty();
        }
        Path hall = folder.resolve("lantern-yard");
        WholeProgram.Ended audit = WholeProgram.run(
                false,
                told("audit"),
                hall.resolve("project.json").toString(),
                hall.resolve("project.plan.json").toString());
        // 4 where the two seconds of this machine found no plan that keeps every rule.
        assertThat(audit.code()).as(audit.err()).isIn(0, 4, 6);
        assertThat(audit.out()).contains("Lantern Yard");
    }

    private void looksAround() throws IOException {
        assertThat(browser.text("#figures").replaceAll("\\s+", " "))
                .contains(told("Placed 0 of 28").substring(7));
        window.turnTo("loads", ".grid .body .row");
        browser.until("document.querySelector('[data-c=\"7\"]')");
        window.click("[data-r='0'][data-c='7']");
        browser.press("1.5", Keys.ENTER);
        window.untilSaid(told("1 cell taken in."));
        undo();
        window.click("[data-r='0'][data-c='7']");
        browser.press(told("many"), Keys.ENTER);
        browser.until("document.querySelector('[aria-invalid=true]')");
        window.click("[aria-invalid=true]");
        browser.press("1.5", Keys.ENTER);
        browser.until("!document.querySelector('[aria-invalid=true]')");
        window.untilSaid("1 cell taken in.");
        undo();
    }

    private void putsLoadsDown() throws IOException {
        window.turnTo("plan", ".tray .cell");
        String load = browser.element(".tray .cell").getDomAttribute("data-load");
        browser.hand()
                .clickAndHold(browser.element(".tray .cell"))
                .moveByOffset(12, 12)
                .perform();
        browser.until("document.querySelector('.cell.fits, .cell.breaks')");
        browser.hand()
                .moveToElement(browser.element(".panel .cell.free"))
                .release()
                .perform();
        window.untilSaid(load + " is at ");
        undo();
        assertThat(browser.count(".tray .cell")).isEqualTo(28);
    }

    private void letsItSearch() throws IOException {
        window.turnTo("search", "#begin");
        search();
        press("Take what it found");
        window.untilSaid("Taken: objective");
        assertThat(browser.text("#figures").replaceAll("\\s+", " ")).contains("28 of 28");
        window.turnTo("time", "svg.lanes");
        assertThat(browser.count(".settings select")).isPositive();
    }

    private void makesItItsOwn() throws IOException {
        window.turnTo("plan", ".panel .cell.taken");
        browser.element(".panel .cell.taken").click();
        press("Pin");
        window.untilSaid("stays where it is.");
        window.turnTo("search", "#begin");
        browser.element("#most").sendKeys(told("4"));
        search();
        window.turnTo("kept", "#keep");
        browser.element("#kept-name").sendKeys(told("first"));
        browser.element("#keep").click();
        browser.until("document.querySelectorAll('.kept tbody tr').length === 2");
        window.turnTo("why", "#answer");
        press("What makes the peak?");
        browser.until("document.getElementById('answer').textContent.includes('peak')");
    }
}
