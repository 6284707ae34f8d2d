package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Referee;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The page plays what the model computes. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PlayedSequenceTest {
    /** Half of the last digit shown. */
    private static final double SHOWN_AMPS = 0.05 + 1e-6;

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

    private void open(String dataset) {
        DrawnPages.Planned planned = DrawnPages.of(dataset);
        layout = planned.layout();
        page = PlanPage.open(browser, planned.document(), folder);
    }

    private double tolerance() {
        return layout.project().timingToleranceSeconds();
    }

    /** Loads that may draw at that time. */
    private Set<String> on(double seconds) {
        return layout.placements().stream()
                .filter(Placement::fits)
                .filter(each -> each.onSeconds().orElse(Double.NEGATIVE_INFINITY) - tolerance() <= seconds + 1e-12)
                .map(Placement::id)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private List<Double> amps(Iterable<Placement> fed, double seconds) {
        List<Phase> phases = layout.project().supply().system().phases();
        double[] sums = new double[phases.size()];
        for (Placement each : fed) {
            InrushEnvelope envelope = InrushEnvelope.of(each.load(), tolerance());
            double amps = each.onSeconds().isPresent()
                    ? envelope.amps(each.onSeconds().getAsDouble(), seconds)
                    : envelope.baseAmps();
            each.phases().stream().distinct().forEach(phase -> sums[phases.indexOf(phase)] += amps);
        }
        return java.util.Arrays.stream(sums).boxed().toList();
    }

    private List<Placement> all() {
        return layout.placements().stream().filter(Placement::fits).toList();
    }

    private static void assertShown(List<Double> shown, List<Double> expected) {
        assertThat(shown).hasSameSizeAs(expected);
        for (int i = 0; i < shown.size(); i++) {
            assertThat(shown.get(i)).isCloseTo(expected.get(i), within(SHOWN_AMPS));
        }
    }

    @Nested
    class Scrubbing {
        @ParameterizedTest
        @ValueSource(strings = {"meridian-hall", "lumen-theatre", "willow-chapel"})
        void lightsThePanelsAndShowsTheCurrentThatTheModelComputes(String dataset) {
            open(dataset);
            double end = layout.times().durationSeconds();

            for (double seconds : new double[] {0, 0.31 * end, 0.77 * end, end, 0.5 * end}) {
                page.scrubTo(seconds);

                assertThat(page.lit()).isEqualTo(on(seconds));
                assertThat(page.loads(".schedule .lamp.on")).isEqualTo(on(seconds));
                assertShown(page.amps(), amps(all(), seconds));
                assertShown(
                        page.ampsOfPanel(1),
                        amps(layout.in(layout.project().panels().get(1)), seconds));
            }
        }

        @Test
        void byMouseOnTheSlider() {
            open("lumen-theatre");
            WebElement time = page.the("#time");
            int width = time.getSize().width;

            browser.hand()
                    .moveToElement(time, -width / 2 + 5, 0)
                    .clickAndHold()
                    .moveByOffset(width / 3, 0)
                    .release()
                    .perform();
            page.frame();

            double third = page.seconds();
            assertThat(third)
                    .isBetween(
                            0.25 * layout.times().durationSeconds(),
                            0.45 * layout.times().durationSeconds());
            assertThat(page.the("#clock").getText()).isEqualTo(String.format(java.util.Locale.ROOT, "%.2f s", third));
            assertThat(page.lit()).isEqualTo(on(third));
        }

        @Test
        void byMouseOnTheCurve() {
            open("lumen-theatre");
            WebElement drawing = page.the("#drawing");

            browser.hand()
                    .moveToElement(drawing, 0, 0)
                    .clickAndHold()
                    .moveByOffset(100, 0)
                    .release()
                    .perform();
            page.frame();

            assertThat(page.seconds()).isGreaterThan(0.5 * layout.times().durationSeconds());
            assertThat(page.lit()).isEqualTo(on(page.seconds()));
        }

        @Test
        void byKeyboard() {
            open("lumen-theatre");
            page.the("#play").sendKeys(Keys.TAB, Keys.TAB);
            assertThat(browser.focused().getDomAttribute("id")).isEqualTo("time");

            browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_LEFT);
            assertThat(page.seconds()).isCloseTo(0.2, within(1e-9));
            browser.press(Keys.PAGE_DOWN);
            assertThat(page.seconds())
                    .isCloseTo(
                            all().stream()
                                    .filter(each -> each.onSeconds().isPresent())
                                    .mapToDouble(each -> each.onSeconds().getAsDouble() - tolerance())
                                    .filter(start -> start > 0.2)
                                    .min()
                                    .orElseThrow(),
                            within(1e-9));
            browser.press(Keys.END);
            assertThat(page.lit()).isEqualTo(on(layout.times().durationSeconds()));
            browser.press(Keys.HOME);
            assertThat(page.seconds()).isZero();
        }
    }

    @Test
    void thePlayerStaysInViewWhereverThePageIs() {
        open("meridian-hall");

        for (String place : List.of("panels", "moment", "landing")) {
            browser.script("document.getElementById(arguments[0]).scrollIntoView()", place);

            assertThat(browser.script("return document.querySelector('.player').getBoundingClientRect().top"))
                    .as(place)
                    .isEqualTo(0L);
        }
    }

    @Nested
    class ThePeak {
        @Test
        void ofEveryNodeIsTheReferees() {
            open("meridian-hall");

            for (int node = 0; node < layout.nodes().size(); node++) {
                NodeFigures figures = layout.nodes().get(node);
                PhasePeak worst = figures.peaks().stream()
                        .max(Comparator.comparingDouble(PhasePeak::amps))
                        .orElseThrow();
                page.chooseNode(node);
                page.the("#to-peak").click();
                page.frame();

                assertThat(page.amps().get(figures.peaks().indexOf(worst))).isCloseTo(worst.amps(), within(SHOWN_AMPS));
                assertThat(page.the("svg.curve .peaked").getText())
                        .isEqualTo(String.format(
                                java.util.Locale.ROOT,
                                "peak %.1f A, phase %s, %.2f s",
                                worst.amps(),
                                worst.phase(),
                                worst.atSeconds()));
            }
        }

        @Test
        void isTakenApartByLoad() {
            open("meridian-hall");
            page.the("#to-peak").click();
            browser.script("document.getElementById('moment').scrollIntoView()");
            browser.until("document.getElementById('moment-where').textContent.includes("
                    + "' ' + document.getElementById('clock').textContent)");

            List<PeakShare> shares = Referee.judge(layout).peakShares();
            assertThat(page.the("#moment-where").getText()).contains("of " + shares.size() + " shares");
            assertThat(page.the("#shares li .who").getText())
                    .startsWith(shares.get(0).load() + " ");
            assertThat(page.the("#shares li .much").getText())
                    .isEqualTo(String.format(
                            java.util.Locale.ROOT, "%.1f A", shares.get(0).amps()));
        }
    }

    @Nested
    class Playing {
        @Test
        void goesOnUntilPausedAndThenStandsStill() {
            open("lumen-theatre");
            page.choose("speed", 10);

            page.the("#play").click();
            assertThat(page.the("#play").getText()).contains("Pause");
            browser.until("document.getElementById('time').value > 2");
            page.the("#play").click();

            double held = page.seconds();
            assertThat(page.the("#play").getText()).contains("Play");
            assertThat(page.lit()).isEqualTo(on(held));
            page.frame();
            page.frame();
            assertThat(page.seconds()).isEqualTo(held);
        }

        @Test
        void endsWithEveryLoadOnAndBeginsAnew() {
            open("willow-chapel");
            page.choose("speed", 10);
            page.scrubTo(layout.times().durationSeconds() - 1);

            page.the("#play").click();
            browser.until("document.querySelector('#play .word').textContent === 'Play'");

            assertThat(page.lit()).isEqualTo(on(layout.times().durationSeconds()));
            page.the("#play").click();
            browser.until("document.getElementById('time').value < 10");
            page.the("#play").click();
        }

        @Test
        void isSaidAloudWhenTheHandRests() {
            open("willow-chapel");

            page.scrubTo(layout.times().durationSeconds());

            browser.until("document.getElementById('said').textContent.includes('of " + all().size() + " loads on')");
            assertThat(page.the("#said").getDomAttribute("role")).isEqualTo("status");
        }
    }
}
