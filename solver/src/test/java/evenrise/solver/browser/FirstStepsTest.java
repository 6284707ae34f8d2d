package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.ProjectFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Somebody opens the desk on an empty folder, takes the practice hall and does what the first steps say. */
@Tag("slow")
@Needs({"chromium", "chromedriver"})
class FirstStepsTest {
    private static final int STEPS = 8;
    /** A load that nobody has pinned yet: the hall has some that are. */
    private static final String FREE_LOAD = ".panel .cell.taken:not(:has(.pin))";

    /** Where the load in the hand has room, whatever rules say of it. */
    private static final String PLACE = ".panel .cell.free.fits, .panel .cell.free.breaks";

    private static final Path PICTURE = Path.of("../docs/figures/desk-steps.png");

    @TempDir
    private Path folder;

    private DeskWindow window;
    private Browser browser;

    private void isTicked(int steps) {
        browser.until("document.querySelectorAll('#first-steps .done').length === " + steps);
    }

    /** By the link of the step that is next. */
    private void follow(String part) {
        browser.element("#first-steps .next a").click();
        browser.until("document.querySelector('" + part + "')");
    }

    private void search(String button) {
        browser.element("#seconds").clear();
        browser.element("#seconds").sendKeys("2");
        browser.element(button).click();
        browser.until("document.querySelector('.searching').dataset.state === 'found'");
    }

    @Test
    void everyStepIsTickedOnceItIsDone() throws IOException {
        try (Browser opened = new Browser();
                DeskWindow desk = DeskWindow.onFolder(opened, Files.createDirectory(folder.resolve("empty")))) {
            browser = opened;
            window = desk;
            assertThat(window.barriers()).isEmpty();
            browser.until("document.getElementById('practise')");
            browser.element("#practise").click();
            isTicked(1);
            plansIt();
            takesALoadIntoTheHand();
            if (Boolean.getBoolean("evenrise.refresh")) {
                Files.write(PICTURE, browser.picture());
            }
            setsAndAsks();
            assertThat(browser.text("#first-steps h2")).isEqualTo("First steps, all done");
            assertThat(window.barriers()).isEmpty();
            browser.element("#enough").click();
            browser.until("document.getElementById('first-steps').hidden");
            browser.element("#steps").click();
            isTicked(0);
            assertThat(browser.count("#first-steps li")).isEqualTo(STEPS);
            assertThat(browser.complaints()).isEmpty();
        }
        assertThat(ProjectFile.read(folder.resolve("empty/project.json")).value())
                .isPresent();
    }

    private void plansIt() {
        follow("#begin");
        search("#begin");
        window.button("Take what it found").click();
        isTicked(2);
    }

    private void takesALoadIntoTheHand() {
        follow(FREE_LOAD);
        window.click(FREE_LOAD);
        window.button("Pick up").click();
        browser.until("document.querySelector('" + PLACE + "')");
        // The bar of the load in the hand lies over the foot of the window.
        browser.script("document.querySelector('" + PLACE + "').scrollIntoView({ block: 'center' })");
        window.click(PLACE);
        isTicked(3);
        // What was put down is still what is chosen.
        window.button("Pin").click();
        isTicked(4);
        follow("#around");
        search("#around");
        isTicked(5);
    }

    private void setsAndAsks() {
        follow(".settings select");
        browser.script(
                "const s = document.querySelector('.settings select');"
                        + "s.selectedIndex = s.selectedIndex === 0 ? 1 : 0; s.dispatchEvent(new Event('change', { bubbles: true }))");
        isTicked(6);
        follow("#answer");
        window.button("What makes the peak?").click();
        isTicked(7);
        follow("#keep");
        browser.element("#kept-name").sendKeys("practised", Keys.TAB);
        browser.element("#keep").click();
        isTicked(STEPS);
    }

    @Test
    void everyViewThatNeedsItHasAHelp() throws IOException {
        try (Browser opened = new Browser();
                DeskWindow desk = DeskWindow.on(opened, "lantern-yard", folder)) {
            for (String view : desk.texts("nav a")) {
                opened.script(
                        "Array.from(document.querySelectorAll('nav a')).find(a => a.textContent === arguments[0]).click()",
                        view);
                opened.until("document.querySelector('nav a[aria-current]').textContent === '" + view + "'");

                assertThat(opened.script("return document.getElementById('help').hidden"))
                        .as(view)
                        .isEqualTo(false);
            }
        }
    }
}
