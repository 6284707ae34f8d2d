package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** WCAG 2.1, levels A and AA: what the checker axe-core sees, and what it cannot. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PageAccessibilityTest {
    private static final String CHECK = "const done = arguments[0];"
            + "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'], resultTypes: ['violations'] })"
            + ".then(found => done(found.violations.flatMap(each => each.nodes.map(node =>"
            + " each.id + ': ' + node.target + ': ' + node.failureSummary))), error => done(['failed: ' + error]))";

    @TempDir
    private Path folder;

    private Browser browser;
    private String axe;

    @BeforeAll
    void openABrowser() throws IOException {
        browser = new Browser();
        try (InputStream in = PageAccessibilityTest.class.getResourceAsStream("/axe.min.js")) {
            axe = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    @AfterEach
    void asAtFirst() {
        browser.window(1280, 900);
        browser.scheme("light");
    }

    private PlanPage open(String dataset) {
        return PlanPage.open(browser, DrawnPages.of(dataset).document(), folder);
    }

    /** Half the loads on, some filtered out, one pointed at: every state that a colour stands for is on the page. */
    private void use(PlanPage page) {
        page.scrubTo(DrawnPages.of("lumen-theatre").document().durationSeconds() / 2);
        page.choose("f-phase", "B");
        browser.script("document.querySelector('.slots button.on').focus()");
        page.frame();
    }

    /** The checker wants to see what is behind each text, so nothing may be skipped for being out of view. */
    private List<?> violations() {
        browser.script("document.querySelectorAll('.panel, .big, .board').forEach(each =>"
                + " { each.style.contentVisibility = 'visible'; })");
        // Rows of one table are alike, and the checker's time is by the element.
        browser.script("document.querySelectorAll('tbody').forEach(body => Array.from(body.rows).slice(12)"
                + ".filter(row => !row.className).forEach(row => row.remove()))");
        browser.script(axe);
        return (List<?>) browser.scriptThatWaits(CHECK);
    }

    @Nested
    class TheChecker {
        @ParameterizedTest
        @CsvSource({"light, 1280", "dark, 1280", "light, 390", "dark, 390"})
        void findsNothing(String scheme, int width) {
            browser.window(width, 900);
            browser.scheme(scheme);
            use(open("lumen-theatre"));

            assertThat(violations()).isEmpty();
        }

        @Test
        void findsWhatIsWrong() {
            open("willow-chapel");
            browser.script(
                    "document.getElementById('search').parentElement.replaceWith(document.getElementById('search'));"
                            + "document.getElementById('search').removeAttribute('placeholder')");

            assertThat(violations().toString()).contains("label: #search");
        }
    }

    @Nested
    class BeyondTheChecker {
        @Test
        void everyHeaderOfATableSaysWhatItHeads() {
            open("willow-chapel");

            assertThat(browser.count("th:not([scope])")).isZero();
            assertThat(browser.count("th[scope=col]")).isPositive();
        }

        @Test
        void aLampTellsBySignAsWellAsByColour() {
            PlanPage page = open("lumen-theatre");
            page.scrubTo(10);

            assertThat(sign(".slots button.on .id")).isEqualTo("\"● \"");
            assertThat(sign(".slots button:not(.on) .id")).isEqualTo("\"○ \"");
        }

        private Object sign(String selector) {
            return browser.script(
                    "return getComputedStyle(document.querySelector(arguments[0]), '::before').content", selector);
        }

        @Test
        void aCurveTellsByItsLaneAsWellAsByColour() {
            open("lumen-theatre");

            assertThat((List<?>) browser.script("return Array.from(document.querySelectorAll('svg.curve .letter'),"
                            + " each => each.textContent)"))
                    .isEqualTo(List.of("A", "B", "C"));
            assertThat((Boolean)
                            browser.script("const lanes = Array.from(document.querySelectorAll('svg.curve .phase'),"
                                    + " each => each.getBBox());"
                                    + " return lanes.length === 3 && lanes.slice(1).every((lane, k) =>"
                                    + " lane.y > lanes[k].y + lanes[k].height)"))
                    .isTrue();
        }

        @Test
        void aBreakerSaysStateSlotPhaseAndTime() {
            PlanPage page = open("lumen-theatre");
            String load = page.the(".slots button:not(.on)").getDomAttribute("data-load");
            String button = ".slots [data-load='" + load + "']";
            browser.script("document.querySelector(arguments[0]).focus()", button);

            assertThat(page.the(button).getDomAttribute("aria-label"))
                    .matches(Pattern.quote(load)
                            + ", slot [0-9]+( and [0-9]+)*, phase [ABC]( and [ABC])*, off, comes on at"
                            + " [0-9]+\\.[0-9]{2} s");

            page.scrubTo(DrawnPages.of("lumen-theatre").document().durationSeconds());
            browser.until("document.querySelector(\"" + button + "\").getAttribute('aria-label').includes(', on,')");
        }

        /** What changes sixty times a second is read out by nobody. */
        @Test
        void theClockIsNoLiveRegion() {
            open("willow-chapel");

            assertThat(browser.count("output, #clock[role=status], #clock[aria-live], #clock [aria-live]"))
                    .isZero();
            assertThat(browser.script("return document.getElementById('clock').closest('[aria-live], [role=status]')"))
                    .isNull();
        }

        @Test
        void theChartSaysWhatItShows() {
            PlanPage page = open("lumen-theatre");

            assertThat((String) browser.script("return document.querySelector('svg.curve title').textContent"))
                    .contains(page.the("svg.curve .peaked").getText())
                    .contains("limit 240 A")
                    .contains("above the peak");
        }

        @Test
        void everyTableHasACaptionAndItsRowsHaveHeaders() {
            open("lumen-theatre");
            browser.script("dispatchEvent(new Event('beforeprint'))");

            assertThat(browser.script("return Array.from(document.querySelectorAll('table')).filter(table =>"
                            + " !table.caption || !table.caption.textContent.trim()).length"))
                    .isEqualTo(0L);
            assertThat(browser.script(
                            "return Array.from(document.querySelectorAll('section.big tbody tr')).filter(row =>"
                                    + " !row.querySelector('th[scope=row]')).length"))
                    .isEqualTo(0L);
        }

        /** WCAG 2.2, target size: 24 pixels each way for whatever is not within a sentence. */
        @Test
        void aFingerFindsEverythingOnAPhone() {
            browser.window(390, 800);
            open("lumen-theatre");

            assertThat((List<?>) browser.script(
                            "return Array.from(document.querySelectorAll('button, select, input, nav a, .handle')).filter(each =>"
                                    + " each.checkVisibility() && !each.closest('dialog, #about')).filter(each => { const box ="
                                    + " each.getBoundingClientRect(); return box.width < 24 || box.height < 24; })"
                                    + ".map(each => each.id || each.className || each.textContent)"))
                    .isEmpty();
        }

        /** They stand in one row that is pushed sideways. */
        @Test
        void noLinkToAPartIsDrawnOverTheNextOnAPhone() {
            browser.window(390, 800);
            open("lumen-theatre");

            assertThat((List<?>) browser.script(
                            "return Array.from(document.querySelectorAll('nav a')).filter(each => each.scrollWidth >"
                                    + " each.clientWidth + 1).map(each => each.textContent)"))
                    .isEmpty();
            assertThat(browser.script("return document.querySelectorAll('nav a').length > 5"))
                    .isEqualTo(true);
        }

        /** 1280 pixels at 200 and at 400 %. */
        @ParameterizedTest
        @ValueSource(ints = {640, 320})
        void enlargedItNeedsNoScrollingSideways(int width) {
            browser.window(width, 450);
            use(open("lumen-theatre"));

            assertThat(browser.script("return document.documentElement.scrollWidth"))
                    .isEqualTo((long) width);
        }

        @Test
        void whoWantsNoMotionGetsTwoPicturesASecond() {
            browser.media("screen", "light", "reduce");
            PlanPage page = open("lumen-theatre");
            browser.script("window.shown = []; new MutationObserver(() =>"
                    + " shown.push(Number(document.getElementById('time').value)))"
                    + ".observe(document.getElementById('clock'), { childList: true })");

            page.the("#play").click();
            browser.until("shown.length >= 2");
            page.the("#play").click();

            List<?> shown = (List<?>) browser.script("return shown");
            assertThat(((Number) shown.get(1)).doubleValue() - ((Number) shown.get(0)).doubleValue())
                    .isGreaterThanOrEqualTo(0.499);
            assertThat(page.the(".slots button").getCssValue("transition-duration"))
                    .isEqualTo("0s");
        }

        @Test
        void inPrintThereIsNoPlayerAndNoRowIsLeftOut() {
            PlanPage page = open("lumen-theatre");
            use(page);

            browser.media("print", "dark", "no-preference");

            assertThat(page.the(".player").isDisplayed()).isFalse();
            assertThat(page.the("#about").isDisplayed()).isFalse();
            assertThat(page.the("#circuits tr.gone").isDisplayed()).isTrue();
            assertThat(page.the("body").getCssValue("background-color")).isEqualTo("rgba(255, 255, 255, 1)");
            assertThat(page.the("h1").getCssValue("color")).isEqualTo("rgba(25, 29, 33, 1)");
        }

        @Test
        void theColoursCanBeChosenAgainstTheSystem() {
            PlanPage page = open("lumen-theatre");
            String light = page.the("body").getCssValue("background-color");

            page.choose("look", "dark");

            assertThat(page.the("body").getCssValue("background-color")).isNotEqualTo(light);
        }
    }
}
