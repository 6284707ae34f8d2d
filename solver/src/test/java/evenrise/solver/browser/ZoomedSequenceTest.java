package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PhasePeak;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteLabel;
import evenrise.solver.document.SiteLabels;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Everything drawn over time shares one axis, which can be looked at closely, and a link leads to what is seen. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class ZoomedSequenceTest {
    @TempDir
    private Path folder;

    private Browser browser;
    private Layout layout;
    private PlanPage page;

    @BeforeAll
    void openABrowser() {
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    @BeforeEach
    void openTheTheatre() {
        DrawnPages.Planned planned = DrawnPages.of("lumen-theatre");
        layout = planned.layout();
        page = PlanPage.open(browser, planned.document(), folder);
    }

    private double edge(String id) {
        return Double.parseDouble(page.the("#" + id).getDomAttribute("aria-valuenow"));
    }

    private double width() {
        return edge("window-until") - edge("window-from");
    }

    /** As a link says it. */
    private void follow(String hash) {
        browser.script("location.hash = arguments[0]", hash);
        page.frame();
        page.frame();
    }

    /** Corners of the curve of a phase, in seconds and ampere. */
    private List<?> corners(int phase) {
        return (List<?>) browser.script(
                "const plot = JSON.parse(document.getElementById('played').textContent).plot,"
                        + " from = Number(document.getElementById('window-from').getAttribute('aria-valuenow')),"
                        + " until = Number(document.getElementById('window-until').getAttribute('aria-valuenow'));"
                        + " return document.querySelectorAll('svg.curve path.phase')[arguments[0]].getAttribute('d').slice(1)"
                        + ".split('L').map(each => from + (until - from) * (Number(each.split(' ')[0]) - plot.left) / (plot.right - plot.left))",
                phase);
    }

    @Nested
    class Closer {
        @Test
        void byKeysDownToTenMilliseconds() {
            browser.script("document.getElementById('stage').focus()");

            for (int i = 0; i < 20; i++) {
                browser.press("+");
            }
            page.frame();

            assertThat(width()).isCloseTo(0.01, within(1e-6));
            browser.press("0");
            page.frame();
            assertThat(edge("window-from")).isZero();
        }

        @Test
        void byTheWheelWhereTheDrawingHasTheFocusAndNotElsewhere() {
            double whole = width();
            String wheel = "document.getElementById('drawing').dispatchEvent(new WheelEvent('wheel',"
                    + " { deltaY: -300, clientX: 640, bubbles: true, cancelable: true }))";

            browser.script(wheel);
            page.frame();
            assertThat(width()).isEqualTo(whole);

            browser.script("document.getElementById('stage').focus()");
            browser.script(wheel);
            page.frame();
            assertThat(width()).isCloseTo(whole * Math.exp(-0.6), within(0.01));
        }

        /** Touches as a screen sends them, not events of our own making. */
        @Test
        void byTwoFingersAndBackAgain() {
            double whole = width();

            browser.pinch("#drawing", 60, 180);
            page.frame();
            page.frame();

            // Three times as far apart, so a third of the time fills the drawing.
            assertThat(width()).isCloseTo(whole / 3, within(0.05 * whole));
            browser.pinch("#drawing", 180, 45);
            page.frame();
            page.frame();
            assertThat(width()).isCloseTo(whole, within(0.05 * whole));
        }

        @Test
        void byTheEdgesOfTheOverview() {
            browser.script("document.getElementById('window-from').focus()");

            browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
            page.frame();

            assertThat(edge("window-from")).isPositive();
            page.the("#whole").click();
            page.frame();
            assertThat(edge("window-from")).isZero();
        }

        /** As early and as strong as it may come: the jump lies at the nominal time less the tolerance, to a pixel. */
        @Test
        void jumpsStandWhereTheModelHasThem() {
            PhasePeak peak = layout.worstPeak(0);
            double at = peak.atSeconds() - layout.project().timingToleranceSeconds();

            follow(String.format(Locale.ROOT, "#t=%.3f&from=%.3f&until=%.3f", at, at - 0.05, at + 0.05));

            assertThat(width()).isCloseTo(0.1, within(1e-3));
            int phase = layout.project().supply().system().phases().indexOf(peak.phase());
            double pixel = 0.1 / 862;
            assertThat(corners(phase))
                    .anySatisfy(
                            each -> assertThat(((Number) each).doubleValue()).isCloseTo(at, within(1.5 * pixel)));
        }
    }

    @Nested
    class ALink {
        @Test
        void isWrittenWhenTheHandRestsAndLeadsBack() {
            page.chooseNode(2);
            page.scrubTo(7.5);
            browser.until("location.hash.startsWith('#t=7.50&at=')");
            String hash = (String) browser.script("return location.hash");

            page = PlanPage.open(browser, DrawnPages.of("lumen-theatre").document(), folder);
            follow(hash);

            assertThat(page.seconds()).isCloseTo(7.5, within(1e-9));
            assertThat(page.the("#node").getDomProperty("value")).isEqualTo("2");
        }

        @Test
        void toALoadGoesToItsSwitchOn() {
            String load = layout.placements().stream()
                    .filter(each -> each.onSeconds().isPresent())
                    .findFirst()
                    .orElseThrow()
                    .id();

            follow("#load=" + load);

            assertThat(page.loads(".slots .picked")).containsExactly(load);
            assertThat(page.lit()).contains(load);
        }

        @Test
        void onALabelGoesToItsLoad() {
            DrawnPages.Planned planned = DrawnPages.of("lumen-theatre");
            SiteLabel label = new SiteLabels(planned.document(), SheetWords.in(SheetLanguage.EN))
                    .of(LabelKind.BREAKER)
                    .get(3);

            follow("#" + label.anchor());

            assertThat(page.loads(".slots .picked"))
                    .containsExactly(label.anchor().substring("load=".length()));
        }

        @Test
        void thatSaysNonsenseDoesNothing() {
            follow("#t=abc&from=9&until=1&at=nowhere&load=nobody");

            assertThat(page.seconds()).isZero();
            assertThat(browser.complaints()).isEmpty();
        }
    }

    @Nested
    class WhatIsChosen {
        @Test
        void isFilledInTheCurveAndTheRestIsDimNotStruckThrough() {
            page.choose("f-phase", "A");
            page.frame();

            assertThat((String) browser.script("return document.querySelector('svg.curve .part').getAttribute('d')"))
                    .isNotEmpty();
            assertThat(
                            (String)
                                    browser.script(
                                            "return Array.from(document.querySelectorAll('.ons.dim'), each => each.getAttribute('d')).join('')"))
                    .isNotEmpty();
            assertThat(page.the(".slots button:not(.fits)").getCssValue("text-decoration-line"))
                    .isEqualTo("none");
        }
    }

    @Nested
    class ATable {
        @Test
        void isSortedByAHeaderBothWays() {
            String values = "return Array.from(document.querySelectorAll('#margins tbody tr'),"
                    + " row => Number(row.cells[5].textContent))";
            browser.script("document.querySelectorAll('#margins th button.sort')[5].click()");
            List<?> rising = (List<?>) browser.script(values);
            browser.script("document.querySelectorAll('#margins th button.sort')[5].click()");
            List<?> falling = (List<?>) browser.script(values);

            assertThat(rising.stream().map(each -> ((Number) each).doubleValue()))
                    .isSorted();
            assertThat(falling.stream().map(each -> -((Number) each).doubleValue()))
                    .isSorted();
            assertThat(browser.count("#margins th[aria-sort=descending]")).isEqualTo(1);
        }

        @Test
        void isTakenAwayWithTheCautions() {
            browser.script("window.took = []; URL.createObjectURL = blob => { took.push(blob); return '#'; };"
                    + " HTMLAnchorElement.prototype.click = function () { took.push(this.download); };"
                    + " document.querySelector('#balance .tools button').click()");
            String text = (String) browser.scriptThatWaits("const done = arguments[0]; took[0].text().then(done)");

            assertThat(browser.script("return took[1]")).isEqualTo("balance.csv");
            assertThat(text.lines().count()).isEqualTo(1 + layout.nodes().size() + browser.count(".cautions li"));
            assertThat(text).contains("# Caution: ");
        }
    }

    @Test
    void theStripNamesTheTightestPlaceFirst() {
        browser.script("document.getElementById('strip').scrollIntoView()");
        browser.until("document.querySelectorAll('#strip-rows .row').length > 1");

        assertThat((List<?>) browser.script("return Array.from(document.querySelectorAll('#strip-rows .much'),"
                        + " each => -parseFloat(each.textContent))"))
                .map(each -> ((Number) each).doubleValue())
                .isSorted();
        browser.script("document.querySelector('#strip-rows .row:last-child button').click()");
        assertThat(page.the("#node").getDomProperty("value"))
                .isEqualTo(page.the("#strip-rows .row:last-child button").getDomAttribute("data-node"));
    }
}
