package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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

/** A plan as built is cured at the desk: readings in, the front, the order of the work, sheets, files. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskReworkTest {
    private static final int MOST_TABS = 120;
    private static final Path PICTURE = Path.of("../docs/figures/desk-rework.png");
    private static final String CURES = "document.querySelectorAll('.cures tbody tr').length";

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void openADeskAndSearch() throws IOException {
        browser = new Browser();
        window = DeskWindow.asBuilt(browser, "lantern-yard", folder);
        window.turnTo("rework", "#cure-begin");
        browser.script("document.getElementById('cure-read').open = true");
        searches();
    }

    /** With what was read at the yard. */
    private void searches() throws IOException {
        browser.script(
                "document.getElementById('cure-readings').value = arguments[0]",
                Files.readString(Path.of("../datasets/lantern-yard/measured.csv")));
        browser.script("document.getElementById('cure-moves').value = 3000");
        window.click("#cure-begin");
        browser.until("document.querySelector('.rework').dataset.state === 'found'");
        ordered();
    }

    /** The order of the work towards the cure that is chosen is there. */
    private void ordered() {
        browser.until("document.querySelector('.rework').dataset.state === 'found'"
                + " && !document.querySelector('.cures tbody').textContent.includes('…')"
                + " && document.querySelector('.order').dataset.shown?.startsWith(document.getElementById('cure').value"
                + " + ' ')");
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    @BeforeEach
    void lookAtTheLeastWork() {
        browser.window(1280, 900);
        window.turnTo("rework", "#cure-begin");
        slide(0);
    }

    @AfterEach
    void nothingIsComplainedOf() {
        assertThat(browser.complaints()).isEmpty();
    }

    private void slide(int cure) {
        browser.script(
                "const slider = document.getElementById('cure'); slider.value = arguments[0];"
                        + "slider.dispatchEvent(new Event('input', { bubbles: true }))",
                cure);
        ordered();
    }

    private String valueOf(String selector, String property) {
        return String.valueOf(
                browser.script("return document.querySelector(arguments[0])[arguments[1]]", selector, property));
    }

    @Test
    void readingsSayWhatIsBrokenAndTheSearchWhatCuresIt() {
        assertThat(browser.text("#cure-headline")).contains("breaks hard rules in 3 places", "cure all of them");
        assertThat(window.texts(".rework .findings li"))
                .anyMatch(each -> each.contains("12 of 28 loads have measured currents"));
        assertThat(browser.text(".cures tbody tr:first-child")).startsWith("as built 0 0");
        assertThat(browser.text(".cures tbody tr:nth-child(2)")).startsWith("cure");
        assertThat(window.barriers()).isEmpty();
    }

    @Test
    void theCureIsPutOnTheDeskWithWhatWasReadAndTakenBack() {
        String before = browser.text("#figures");
        window.click("#cure-take");

        window.untilSaid("is on the desk: every rule kept");
        browser.until("document.getElementById('cure-take').disabled");
        assertThat(browser.text("#figures")).contains("all kept").isNotEqualTo(before);
        assertThat(browser.text("#cure-headline")).contains("has changed since: search again");
        window.takeBack();
        browser.until("!document.getElementById('cure-take').disabled");
        assertThat(browser.text("#figures")).isEqualTo(before);
    }

    @Test
    void workIsPutInOrderTowardsAKeptPlan() throws IOException {
        window.turnTo("kept", "#keep");
        browser.script("document.querySelector('#kept-name').value = 'wanted'");
        window.click("#keep");
        window.untilSaid("wanted");
        window.turnTo("rework", "#cure-to option:nth-child(2)");
        window.choose("#cure-to", "wanted");
        assertThat(browser.text("#cure-begin")).isEqualTo("Put the work in order");
        window.click("#cure-begin");
        browser.until("document.querySelector('.rework').dataset.state === 'found'");
        assertThat(browser.text("#cure-headline")).contains("Nothing was searched for");
        assertThat(window.texts(".cures tbody th")).containsExactly("as built", "given");
        assertThat(browser.element("#cure-moves").isEnabled()).isFalse();

        window.choose("#cure-to", "");
        assertThat(browser.text("#cure-begin")).isEqualTo("Search for cures");
        searches();
    }

    @Test
    void theFrontFitsItsWindowAndIsKeptAsAPicture() throws IOException {
        browser.media("screen", "light", "reduce");
        browser.script("document.querySelector('.front').scrollIntoView({ block: 'start' })");
        byte[] picture = browser.picture();
        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.write(PICTURE, picture);
        }

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(1280L);
        assertThat(PICTURE).exists();
    }

    @Test
    void theSliderGoesOverTheFrontByKeysAndPointsByMouse() {
        long cures = (Long) browser.script("return " + CURES) - 1;
        assertThat(cures).isGreaterThan(1);
        browser.script("document.getElementById('work').focus()");
        tabTo("#cure");
        browser.press(Keys.ARROW_RIGHT);
        browser.until("document.querySelector('.cures tr.chosen').dataset.cure === '1'");
        ordered();
        assertThat(valueOf("#cure", "ariaValueText")).contains("moves", "objective");
        browser.hand()
                .moveToElement(browser.element(".front circle[data-cure='0']"))
                .click()
                .perform();
        browser.until("document.querySelector('.cures tr.chosen').dataset.cure === '0'");
        ordered();
        assertThat(browser.text("#order-headline")).contains("stage", "whole at the end");
    }

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
    void sheetsAreSeenPageByPageAndWhatIsWrittenIsWhatReworkWrites() throws IOException {
        slide(1);
        window.click("#sheet-look");
        browser.until("document.querySelector('.night-sheets img')?.complete");
        assertThat(browser.text("#sheet-page")).startsWith("Page 1 of ");
        window.click("#sheet-next");
        browser.until("document.getElementById('sheet-page').textContent.startsWith('Page 2 of ')");
        browser.element("#rework-folder").clear();
        browser.element("#rework-folder").sendKeys("monday");
        window.click("#rework-write");
        window.untilSaid("Written into the folder 'monday'");

        Path written = window.folder.resolve("monday");
        assertThat(names(written))
                .contains(
                        "front.csv",
                        "front.json",
                        "project-as-measured.json",
                        "work-a4.pdf",
                        "work-letter.pdf",
                        "work.json",
                        "work.txt");
        Project measured = ProjectFile.read(written.resolve("project-as-measured.json"))
                .value()
                .orElseThrow();
        List<String> plans =
                names(written).stream().filter(each -> each.startsWith("plan-")).toList();
        assertThat(plans).hasSize((int) (long) (Long) browser.script("return " + CURES) - 1);
        for (String each : plans) {
            Plan plan = PlanFile.read(written.resolve(each), measured).value().orElseThrow();
            assertThat(Referee.judge(Layout.of(measured, plan)).violations()).isEmpty();
        }
    }

    private static List<String> names(Path in) throws IOException {
        try (Stream<Path> all = Files.list(in)) {
            return all.map(each -> each.getFileName().toString()).toList();
        }
    }

    /** Until the stages are laid out otherwise, and what they then are, by their changes. */
    private String laid(Runnable deed) {
        Object before = browser.script("return document.querySelector('.order').dataset.shown");
        deed.run();
        browser.until("document.querySelector('.order').dataset.shown !== '" + before + "'");
        return String.valueOf(browser.script("return document.querySelector('.order').dataset.shown"));
    }

    private List<String> stages() {
        return List.of(String.valueOf(browser.script("return document.querySelector('.order').dataset.shown"))
                .replaceFirst("[0-9]+ (hand|own) ", "")
                .split(" "));
    }

    /** The plan with the most to do, each change a stage of its own. */
    private void partTheLastCure() {
        slide((int) (long) (Long) browser.script("return " + CURES) - 2);
        laid(() -> window.click("#stage-part"));
        assertThat(stages()).hasSizeGreaterThan(2);
    }

    @Test
    void stagesAreDraggedAndTheProgramsOrderComesBack() {
        partTheLastCure();
        List<String> before = stages();
        String after = laid(() -> browser.hand()
                .clickAndHold(browser.element(".stage[data-stage='0'] rect"))
                .moveByOffset(30, 0)
                .moveToElement(browser.element(".stage[data-stage='" + (before.size() - 1) + "'] rect"))
                .moveByOffset(12, 0)
                .release()
                .perform());

        assertThat(after).contains(" hand ");
        assertThat(stages()).containsExactlyInAnyOrderElementsOf(before);
        assertThat(stages().get(stages().size() - 1)).isEqualTo(before.get(0));
        assertThat(laid(() -> window.click("#order-back"))).endsWith(String.join(" ", before));
        assertThat(laid(() -> window.click("#order-own"))).contains(" own ");
    }

    @Test
    void stagesAreMovedByKeysAndWhatTheRefereeRefusesIsSaidAndNotWritten() {
        slide(0); // loads that change slots with each other, which no night can do one by one
        laid(() -> window.click("#stage-part"));
        List<String> before = stages();
        browser.script("document.querySelector('.stage[tabindex=\"0\"]').focus()");
        browser.press(Keys.END);
        browser.press(Keys.HOME);
        laid(() -> browser.hand()
                .keyDown(Keys.SHIFT)
                .sendKeys(Keys.ARROW_RIGHT)
                .keyUp(Keys.SHIFT)
                .perform());

        assertThat(stages().get(1)).isEqualTo(before.get(0));
        assertThat(stages().get(0)).isEqualTo(before.get(1));
        assertThat(browser.script("return document.activeElement.dataset.stage"))
                .isEqualTo("1");
        long refused = Long.parseLong(
                String.valueOf(browser.script("return document.querySelector('.order').dataset.refused")));
        assertThat(refused).isPositive();
        browser.script(
                "document.querySelector('.stage.bad').dispatchEvent(new MouseEvent('click', { bubbles: true }))");
        assertThat(browser.text("#referee")).startsWith("The referee refuses stage ");
        assertThat(window.texts(".steps-of tr.bad td:last-child, .stage-of > p.bad"))
                .isNotEmpty();
        window.click("#rework-write");
        window.untilSaid("the order by hand is not written: in stage ");
        assertThat(window.barriers()).isEmpty();
        assertThat(browser.complaints()).allMatch(each -> each.contains("422"));
    }

    @Test
    void aStepShowsWhatIsDeadThenOnTheTree() {
        assertThat(browser.count(".zone.dead")).isPositive();
        assertThat(window.texts(".zone.dead .state")).allMatch("ISOLATED"::equals);
        window.click(".steps-of tbody tr:first-child button");
        assertThat(browser.text("#zones-when")).contains("after step 1: nothing is isolated");
        assertThat(browser.count(".zone.dead")).isZero();
        window.click(".steps-of tbody tr:first-child button");
        assertThat(browser.count(".zone.dead")).isPositive();
        assertThat(browser.count(".drawn .changed")).isPositive();
    }

    @Test
    void whatCannotBeReadIsToldAndNothingIsSearchedFor() throws IOException {
        browser.script("document.getElementById('cure-readings').value = 'load,phase,running_a\\nnobody,A,3\\n'");
        window.click("#cure-begin");
        browser.until("document.querySelector('.rework').dataset.state === 'failed'");

        assertThat(window.texts(".rework .findings li.bad")).anyMatch(each -> each.contains("nobody"));
        assertThat(window.texts(".rework .findings li.bad")).noneMatch(each -> each.contains("evenrise-desk"));
        assertThat(window.barriers()).isEmpty();
        searches();
    }

    @Test
    void fitsAPhoneWithoutABarrier() {
        browser.window(360, 780);

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(360L);
        assertThat(window.barriers()).isEmpty();
    }
}
