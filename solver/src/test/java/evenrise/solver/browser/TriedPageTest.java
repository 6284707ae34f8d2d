package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenrise.model.Needs;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.solver.app.DocumentFormat;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.FileSchema;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.PlanRequest;
import evenrise.solver.app.PlanTarget;
import evenrise.solver.app.ReportRequest;
import evenrise.solver.app.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Somebody who got a page tries changes on it, without a network, and sends the moves back. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class TriedPageTest {
    private static final Path PROJECT = Path.of("../datasets/meridian-hall/project.json");
    private static final Path PLAN = Path.of("src/test/resources/pictures/meridian-hall.plan.json");

    @TempDir
    private static Path folder;

    private Browser browser;
    private Path page;

    @BeforeAll
    void mailThePage() {
        new Jobs()
                .report(ReportRequest.of(
                        PROJECT, PLAN, DocumentSet.into(folder).withFormats(List.of(DocumentFormat.HTML))));
        page = folder.resolve("plan.html");
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    @BeforeEach
    void begin() {
        browser.window(1280, 900);
        browser.open(page);
        browser.complaints();
        browser.script("document.getElementById('try-begin').scrollIntoView({block: 'start', behavior: 'instant'});"
                + " document.getElementById('try-begin').click()");
        browser.until("!document.getElementById('try-desk').hidden");
    }

    private WebElement load(String id, String where) {
        return browser.element("#try-" + where + " [data-trial='" + id + "']");
    }

    private WebElement free(int card) {
        return browser.element("#try-house section:nth-child(" + card + ") .try-free");
    }

    private String figure(int row) {
        return browser.text("#try-figures tr:nth-child(" + row + ") td:nth-child(3)");
    }

    /** The load in the first slot of a panel's card. */
    private String first(int card) {
        return (String) browser.script(
                "return document.querySelector('#try-house section:nth-child(" + card + ") .try-load').dataset.trial");
    }

    private void drag(WebElement from, WebElement to) {
        browser.script("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", from);
        browser.hand()
                .moveToElement(from)
                .clickAndHold()
                .moveByOffset(9, 3)
                .moveToElement(to)
                .release()
                .perform();
    }

    /** Moves a load on a page that was opened elsewhere, and what is saved there. */
    static String triedMoves(Browser elsewhere) {
        elsewhere.script("document.getElementById('try-begin').click()");
        elsewhere.until("!document.getElementById('try-desk').hidden");
        elsewhere.until("document.querySelector('#try-house .try-load')");
        elsewhere.script("document.querySelector('#try-house .try-load').click()");
        elsewhere.until("document.querySelectorAll('.try-free[title]').length > 3");
        elsewhere.script("document.querySelector('#try-house section:nth-child(2) .try-free').click()");
        elsewhere.until("document.querySelectorAll('#try-moves li').length === 1");
        return saved(elsewhere);
    }

    private String saved() {
        return saved(browser);
    }

    private static String saved(Browser browser) {
        browser.script("window.took = []; URL.createObjectURL = blob => { took.push(blob); return '#'; };"
                + " HTMLAnchorElement.prototype.click = function () { took.push(this.download); };"
                + " document.getElementById('try-save').click()");
        assertThat((String) browser.script("return took[1]")).endsWith(".moves.json");
        return (String) browser.scriptThatWaits("const done = arguments[0]; took[0].text().then(done)");
    }

    private PlanRequest takingIn(String moves) throws IOException {
        Path back = Files.writeString(folder.resolve("back.moves.json"), moves);
        return PlanRequest.of(PROJECT).withFrom(Source.file(PLAN)).withChanges(Source.file(back));
    }

    @Test
    void beginsWithTheFiguresOfThePlan() {
        Plan plan = PlanFile.read(PLAN).value().orElseThrow();

        assertThat(figure(1)).isEqualTo("0");
        assertThat(browser.script("return JSON.parse(evenriseReferee.state()).now.peak_a"))
                .isEqualTo(plan.metrics().orElseThrow().peakInrushAmps());
        assertThat(browser.text("#try-said")).startsWith("Nothing is broken");
        assertThat(browser.requests(page)).isEmpty();
        assertThat(browser.complaints()).isEmpty();
    }

    /** Ids as long as those of houses of a thousand loads. */
    @Test
    void aLongIdIsCutAndCoversNeitherItsTimeNorItsSlot() {
        Object over =
                browser.script("return Array.from(document.querySelectorAll('#try-house .try-load')).map(cell => {"
                        + " const [slot, id, at] = Array.from(cell.children);"
                        + " id.firstChild.textContent = 'lower-balcony-left-' + id.firstChild.textContent;"
                        + " const box = Array.from(id.children).map(each => each.getBoundingClientRect());"
                        + " const others = [slot, at].map(each => each.getBoundingClientRect());"
                        + " return box.length === 0 || box.some(a => others.some(b => a.right > b.left + 0.5 && b.right > a.left + 0.5));"
                        + "}).filter(Boolean).length");

        assertThat(over).isEqualTo(0L);
    }

    /** One load by mouse, one by keys; the file is taken in and gives what the page has shown. */
    @Test
    void movesTwoLoadsAndSendsThemBack() throws IOException {
        String dragged = first(1);
        String carried = first(2);

        drag(load(dragged, "house"), free(1));
        browser.until("document.querySelectorAll('#try-moves li').length === 1");
        browser.script("document.querySelector('#try-house [data-trial=\"" + carried + "\"]').focus()");
        browser.press(Keys.ENTER);
        browser.until("document.querySelectorAll('.try-free[title]').length > 3");
        browser.script("document.querySelector('#try-house section:nth-child(2) .try-free').focus()");
        String promised = browser.text("#try-hand");
        browser.press(Keys.ENTER);
        browser.until("document.querySelectorAll('#try-moves li').length === 2");
        String moves = saved();
        Plan taken = new Jobs()
                .plan(takingIn(moves).withTarget(PlanTarget.file(folder.resolve("taken.plan.json"))))
                .plan();

        assertThat(promised).contains("in the hand: ");
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests(page)).isEmpty();
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(FileSchema.MOVES.text())
                        .validate(moves, InputFormat.JSON))
                .isEmpty();
        same("peak_a", taken.metrics().orElseThrow().peakInrushAmps());
        same("objective", taken.metrics().orElseThrow().objective());
        same("duration_s", taken.metrics().orElseThrow().durationSeconds());
        assertThat((List<?>) browser.script("return JSON.parse(evenriseReferee.state()).now.broken"))
                .isEqualTo(
                        taken.violations().stream().map(each -> each.message()).toList());
        List<?> shown = (List<?>) browser.script("return JSON.parse(evenriseReferee.state()).loads.map(each =>"
                + " [each.id, each.panel, each.slots[0], each.board || '', each.output || ''].join(' '))");
        assertThat(places(taken)).isEqualTo(shown);
        assertThat(taken.madeBy().orElseThrow().movesAllowed()).hasValue(0);
        assertThat(new Jobs().plan(takingIn(moves)).plan()).isEqualTo(taken);
    }

    /** At the desk the same moves come onto the plan, and are taken back as one. */
    @Test
    void theDeskTakesThemIn() throws IOException {
        drag(load(first(1), "house"), free(1));
        browser.until("document.querySelectorAll('#try-moves li').length === 1");
        Path back = Files.writeString(folder.resolve("desk.moves.json"), saved());

        Path plan = folder.resolve("meridian-hall/project.plan.json");
        List<String> before;
        try (Browser other = new Browser();
                DeskWindow window = DeskWindow.on(other, "meridian-hall", folder)) {
            before = places(PlanFile.read(plan).value().orElseThrow());
            window.turnTo("kept", ".returned");
            other.element(".returned").sendKeys(back.toAbsolutePath().toString());
            window.untilSaid("are on the desk");
        }

        assertThat(places(PlanFile.read(plan).value().orElseThrow()))
                .as("the plan's file once the desk is closed")
                .isNotEqualTo(before)
                .hasSameSizeAs(before);
    }

    private void same(String key, double expected) {
        double shown = ((Number) browser.script("return JSON.parse(evenriseReferee.state()).now." + key)).doubleValue();

        assertThat(shown).as(key).isCloseTo(expected, within(1e-9 * Math.abs(expected)));
    }

    private static List<String> places(Plan plan) {
        return plan.assignments().stream()
                .map(each -> each.load() + " " + each.panel() + " " + each.slot() + " "
                        + each.board().orElse("") + " "
                        + (each.output().isPresent() ? each.output().getAsInt() : ""))
                .toList();
    }

    @Test
    void aMoveThatBreaksARuleIsMarkedAndTakenBack() {
        String load = (String)
                browser.script("return JSON.parse(evenriseReferee.state()).loads.find(l => l.board !== undefined).id");
        browser.script(
                "const state = evenriseReferee, load = arguments[0];"
                        + " document.querySelector('#try-house [data-trial=\"' + load + '\"]').click()",
                load);
        browser.until("document.querySelector('.try-free.breaks')");
        browser.script("document.querySelector('.try-free.breaks').click()");
        browser.until("document.querySelectorAll('#try-broken li').length > 0");
        boolean isMarked =
                (Boolean) browser.script("return document.getElementById('try-said').classList.contains('bad')");

        browser.script("document.getElementById('try-undo').click()");
        browser.until("document.querySelectorAll('#try-moves li').length === 0");

        assertThat(isMarked).isTrue();
        assertThat(figure(1)).isEqualTo("0");
    }

    @Test
    void fitsAPhone() {
        browser.window(360, 740);
        browser.script("document.querySelector('#try-house .try-load').click()");

        assertThat(browser.script("return document.documentElement.scrollWidth <= 360"))
                .isEqualTo(true);
        assertThat(browser.text("#try-hand")).contains("in the hand");
    }
}
