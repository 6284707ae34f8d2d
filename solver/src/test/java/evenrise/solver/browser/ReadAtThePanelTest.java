package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenrise.model.Needs;
import evenrise.model.file.ProjectFile;
import evenrise.model.measured.Discrepancy;
import evenrise.model.measured.MeasuredQuantity;
import evenrise.model.project.Load;
import evenrise.solver.app.CommissionRequest;
import evenrise.solver.app.CommissionResult;
import evenrise.solver.app.DocumentFormat;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.FileSchema;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.ReportRequest;
import evenrise.solver.app.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** Somebody walks along the panels of the lantern yard with a phone, without a network, and hands the readings back. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class ReadAtThePanelTest {
    private static final Path PROJECT = Path.of("../datasets/lantern-yard/project.json");
    private static final Path PLAN = Path.of("../datasets/lantern-yard/built.plan.json");
    private static final Path FIGURE = Path.of("../docs/figures/readings-narrow.png");

    /** In every place each card is filled by a function of the ask (key and bounds) and its card; empty leaves it blank. */
    private static final String FILL = "const of = new Function('card', 'ask', arguments[0]); const form ="
            + " JSON.parse(document.getElementById('form').textContent), where = document.getElementById('where'); for"
            + " (const place of form.places) { where.value = place.id; where.dispatchEvent(new Event('input')); const"
            + " cards = form.cards.filter(card => card.under === place.id); document.querySelectorAll('#cards"
            + " article').forEach((article, i) => cards[i].asks.forEach(ask => { const input ="
            + " article.querySelector('[data-key=\"' + ask.key + '\"]'), text = of(cards[i], ask); if (text) { input.value"
            + " = text; input.dispatchEvent(new Event('input', { bubbles: true })); } })); }";

    /** What the page marks: load or place, phase, and key of each figure that is not within. */
    private static final String MARKED = "const form = JSON.parse(document.getElementById('form').textContent), where ="
            + " document.getElementById('where'), found = []; for (const place of form.places) { where.value ="
            + " place.id; where.dispatchEvent(new Event('input')); const cards = form.cards.filter(card =>"
            + " card.under === place.id); document.querySelectorAll('#cards article').forEach((article, i) =>"
            + " cards[i].asks.forEach(ask => { const word = article.querySelector('[data-key=\"' + ask.key +"
            + " '\"]').closest('div').querySelector('.word'); if (word.matches('.bad, .warn'))"
            + " found.push((cards[i].load || cards[i].place) + ' ' + (ask.key.includes('.') ? ask.key.replace('.',"
            + " ' ') : cards[i].phase + ' ' + ask.key)); })); } return found;";

    @TempDir
    private static Path folder;

    private Browser browser;
    private Path page;

    @BeforeAll
    void writeThePage() {
        new Jobs()
                .report(ReportRequest.of(
                        PROJECT, PLAN, DocumentSet.into(folder).withFormats(List.of(DocumentFormat.HTML))));
        page = folder.resolve("readings.html");
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    @BeforeEach
    void begin() {
        browser.window(360, 740);
        browser.scheme("light");
        browser.open(page);
        browser.script("localStorage.clear()");
        browser.open(page);
        browser.complaints();
    }

    private static void goTo(Browser browser, String place) {
        browser.script(
                "const where = document.getElementById('where'); where.value = arguments[0];"
                        + " where.dispatchEvent(new Event('input'))",
                place);
    }

    /** By hand, into the first card of a load. */
    private void type(String load, String key, String text) {
        browser.script(
                "Array.from(document.querySelectorAll('#cards article')).find(each =>"
                        + " each.querySelector('h3').textContent === arguments[0]).querySelector('[data-key=\"' +"
                        + " arguments[1] + '\"]').focus()",
                load,
                key);
        browser.press(text);
    }

    private String word(String load, String key) {
        return (String) browser.script(
                "return Array.from(document.querySelectorAll('#cards article')).find(each =>"
                        + " each.querySelector('h3').textContent === arguments[0]).querySelector('[data-key=\"' +"
                        + " arguments[1] + '\"]').closest('div').querySelector('.word').textContent",
                load,
                key);
    }

    private static String saved(Browser browser) {
        browser.script("window.took = []; URL.createObjectURL = blob => { took.push(blob); return '#'; };"
                + " HTMLAnchorElement.prototype.click = function () { took.push(this.download); };"
                + " document.getElementById('save').click()");
        if (Boolean.TRUE.equals(browser.script("return took.length === 0"))) {
            return "";
        }
        assertThat((String) browser.script("return took[1]")).isEqualTo("Lantern-Yard.readings.json");
        return (String) browser.scriptThatWaits("const done = arguments[0]; took[0].text().then(done)");
    }

    private static CommissionResult commission(Path file, Path into) {
        return new Jobs()
                .commission(
                        new CommissionRequest(
                                Source.file(PROJECT),
                                Source.file(PLAN),
                                List.of(file),
                                Optional.empty(),
                                Set.of(),
                                false,
                                Optional.of(into),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty()),
                        JobControl.NONE);
    }

    /** As the page marks it; a running current that is less than stated is no difference there. */
    private static String marked(Discrepancy found) {
        String phase = found.phase().map(Enum::name).orElse("");
        return found.subject() + " " + phase + " "
                + switch (found.quantity()) {
                    case IDLE -> "idle_a";
                    case RUNNING -> "running_a";
                    case PEAK -> "peak_a";
                    case VOLTAGE -> "to_neutral_v";
                    case NEUTRAL -> "neutral_a";
                    case INSULATION -> "insulation_megohm";
                    default -> found.quantity().name();
                };
    }

    /** Every figure of the plant: some on the edge, some wrong, so that both judges have much to say. */
    @Test
    void judgesAtOnceWhatCommissionJudgesOfTheFile() throws IOException {
        browser.script("const name = document.getElementById('m-of-reading'); name.value = '1.5';"
                + " name.dispatchEvent(new Event('input', { bubbles: true }))");
        browser.script(
                FILL,
                "if (/_s$|_ma$|_ms$/.test(ask.key)) return ''; const n = ask.label.length + card.head.length +"
                        + " (card.note || '').length; const top = ask.most ?? ask.limit ?? 3, low = ask.least ?? ask.floor"
                        + " ?? top / 2; const value = n % 4 === 0 ? (low + top) / 2 : n % 4 === 1 ? top * 1.01 : n % 4 ==="
                        + " 2 ? top * 1.3 : low * 0.97; return ask.key === 'running_a' && card.kind === 'pole' ? (ask.most"
                        + " * (n % 3 ? 1 : 1.2)).toFixed(3) : card.kind === 'pole' && ask.key === 'idle_a' ?"
                        + " Math.min(value, card.asks[1].most).toFixed(3) : value.toFixed(3);");

        Set<String> onThePage = new TreeSet<>();
        ((Collection<?>) browser.script(MARKED)).forEach(each -> onThePage.add(each.toString()));
        Path file = Files.writeString(folder.resolve("all.readings.json"), saved(browser));
        List<Discrepancy> found =
                commission(file, folder.resolve("all.json")).plant().discrepancies();
        Set<String> inTheFile = new TreeSet<>();
        found.stream()
                .filter(each -> each.weight() != Discrepancy.Weight.LESS || each.quantity() == MeasuredQuantity.IDLE)
                .forEach(each -> inTheFile.add(marked(each)));

        assertThat(onThePage).hasSizeGreaterThan(30).isEqualTo(inTheFile);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void keepsReadingsAndHandsThemBackWithEqualFigures() throws IOException {
        browser.script("const date = document.getElementById('date'); date.value = '2026-03-14';"
                + " date.dispatchEvent(new Event('input'))");
        goTo(browser, "hall");
        type("main-1", "idle_a", "2,25");
        type("main-1", "on_s", "0.1");
        type("main-1", "remark", "clamp on the lead");
        String within = word("main-1", "idle_a");
        browser.open(page);
        goTo(browser, "hall");
        String kept = (String) browser.script(
                "return Array.from(document.querySelectorAll('#cards article')).find(each => each.querySelector('h3')"
                        + ".textContent === 'main-1').querySelector('[data-key=\"idle_a\"]').value");
        String text = saved(browser);
        Path into = folder.resolve("measured.json");
        commission(Files.writeString(folder.resolve("one.readings.json"), text), into);

        Load measured = ProjectFile.read(into).value().orElseThrow().loads().stream()
                .filter(each -> each.id().equals("main-1"))
                .findFirst()
                .orElseThrow();
        assertThat(kept).isEqualTo("2,25");
        assertThat(within).isNotEmpty();
        assertThat(browser.text("#kept")).contains("3 entries kept");
        assertThat(measured.measured()).singleElement().satisfies(each -> {
            assertThat(each.value()).isEqualTo(2.25);
            assertThat(each.date()).contains("2026-03-14");
            assertThat(each.meter()).contains("M1");
        });
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(FileSchema.READINGS.text())
                        .validate(text, InputFormat.JSON))
                .isEmpty();
        assertThat(text).contains("Isolate and lock out");
        assertThat(browser.requests(page)).isEmpty();
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void tellsAVisitByItsDayAndInstrument() {
        goTo(browser, "hall");
        type("main-1", "idle_a", "2.2");
        browser.element("#new-visit").click();
        browser.element("#new-meter").click();
        browser.press("b");
        browser.script("document.getElementById('date').value = '2026-09-01';"
                + " document.getElementById('date').dispatchEvent(new Event('input'))");
        type("main-1", "idle_a", "2.4");

        String text = saved(browser);

        assertThat(browser.text("#cards")).contains(": 2.2");
        assertThat(text)
                .contains("\"idle_a\": 2.2", "\"idle_a\": 2.4", "\"date\": \"2026-09-01\"", "\"meter\": \"M1\"");
        assertThat(text).containsPattern("\"meter\": \"(M2)?b\"");
    }

    @Test
    void namesWhatIsNoFigureAndLeavesItOut() {
        goTo(browser, "hall");
        type("main-1", "idle_a", "1,234");
        type("main-1", "running_a", "about 4");
        String twofold = word("main-1", "idle_a");

        String nothing = saved(browser);
        String refused = browser.text("#saved");
        type("main-1", "peak_a", "9");
        String text = saved(browser);

        assertThat(twofold).contains("two ways");
        assertThat(nothing).isEmpty();
        assertThat(refused).contains("no reading yet", "main-1, Running, A: about 4");
        assertThat(text).contains("\"peak_a\": 9").doesNotContain("idle_a", "running_a");
        assertThat(browser.text("#saved")).contains("Not in the file", "1,234");
    }

    /** Where a browser keeps nothing for files, that is told, and a saved file brings all of it back. */
    @Test
    void goesOnFromASavedFileWhereNothingIsKept() throws IOException {
        goTo(browser, "hall");
        type("main-1", "idle_a", "2.2");
        browser.script("document.querySelector('[data-key=passed]').value = 'pass';"
                + " document.querySelector('[data-key=passed]').dispatchEvent(new Event('input', { bubbles: true }))");
        String text = saved(browser);
        Path file = Files.writeString(folder.resolve("carried.readings.json"), text);
        try (Browser forgetful = new Browser()) {
            forgetful.beforeEveryPage(
                    "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } })");
            forgetful.window(360, 740);
            forgetful.open(page);
            String told = forgetful.text("#kept");
            forgetful.element("#take").sendKeys(file.toAbsolutePath().toString());
            forgetful.until("document.getElementById('saved').textContent.includes('taken in')");

            assertThat(told).contains("keeps nothing", "Save the readings");
            assertThat(saved(forgetful)).isEqualTo(text);
            assertThat(forgetful.text("#saved")).contains("saved as");
        }
    }

    @ParameterizedTest
    @CsvSource({"light, 360", "dark, 360", "light, 1280", "dark, 1280"})
    void hasNoBarrierAndFitsItsWindow(String scheme, int width) throws IOException {
        browser.window(width, 740);
        browser.scheme(scheme);
        goTo(browser, "hall");
        type("main-1", "idle_a", "2.2");
        type("main-1", "running_a", "60");
        type("main-1", "peak_a", "x");
        browser.script("document.getElementById('meter').open = true");

        assertThat(Barriers.of(browser)).isEmpty();
        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo((long) width);
        assertThat((Collection<?>) browser.script(
                        "return Array.from(document.querySelectorAll('button, select, input, summary')).filter(each =>"
                                + " each.getClientRects().length).filter(each => { const box ="
                                + " each.getBoundingClientRect(); return box.width < 24 || box.height < 24; }).map(each =>"
                                + " each.outerHTML)"))
                .isEmpty();
        assertThat(browser.complaints()).isEmpty();
        if (Boolean.getBoolean("evenrise.refresh") && width == 360 && scheme.equals("light")) {
            browser.script("Array.from(document.querySelectorAll('#cards article')).find(each =>"
                    + " each.querySelector('h3').textContent === 'main-1').scrollIntoView({ block: 'start' })");
            Files.write(FIGURE, browser.picture());
        }
        assertThat(FIGURE).exists();
    }

    @Test
    void walksByKeysAlone() {
        goTo(browser, "hall");
        browser.script("document.getElementById('open').focus()");
        browser.press(Keys.TAB);
        browser.press("231");
        browser.press(Keys.TAB);
        browser.press("280");

        assertThat(browser.script("return Array.from(document.querySelectorAll('#cards .word')).slice(0, 2).map(each =>"
                        + " each.textContent)"))
                .isEqualTo(List.of("✓ within", "✕ unsafe"));
        assertThat(browser.text("#progress")).startsWith("1 of ");
    }
}
