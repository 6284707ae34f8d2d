package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Loads are found, and seen wherever they stand. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PointedAndFilteredTest {
    private static final Set<String> TABLES_OF_LOADS = Set.of("circuits", "landing", "commissioning", "labels");

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
    void openTheHall() {
        DrawnPages.Planned planned = DrawnPages.of("meridian-hall");
        layout = planned.layout();
        page = PlanPage.open(browser, planned.document(), folder);
    }

    private Placement switched() {
        return layout.placements().stream()
                .filter(each -> each.onSeconds().isPresent() && each.load().poles() == 2)
                .findFirst()
                .orElseThrow();
    }

    private Set<String> those(Predicate<Placement> fit) {
        return layout.placements().stream()
                .filter(fit)
                .map(Placement::id)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private void assertSeenEverywhere(String load) {
        assertThat(page.loads(".picked")).containsExactly(load);
        assertThat(page.loads(".slots .picked")).containsExactly(load);
        assertThat(page.loads(".schedule td.lamp.picked")).containsExactly(load);
        TABLES_OF_LOADS.forEach(table ->
                assertThat(page.loads("#" + table + " tr.picked")).as(table).containsExactly(load));
        assertThat(page.the("#lane-mark").getDomAttribute("d")).isNotEmpty();
        assertThat(page.the("#about-text").getText()).startsWith(load + " ");
    }

    @Nested
    class ALoad {
        @Test
        void pointedAtInATableIsSeenEverywhere() {
            String load = switched().id();
            WebElement row = page.the("#landing tr[data-load='" + load + "'] td");
            browser.script("arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })", row);

            browser.hand().moveToElement(row).perform();

            assertSeenEverywhere(load);
        }

        @Test
        void reachedByKeyboardIsSeenEverywhereAndLetGoByEscape() {
            String load = switched().id();

            browser.script("document.querySelector(arguments[0]).focus()", ".slots [data-load='" + load + "']");
            assertSeenEverywhere(load);
            browser.press(Keys.ESCAPE);

            assertThat(page.loads(".picked")).isEmpty();
            assertThat(page.the("#about").isDisplayed()).isFalse();
        }

        @Test
        void isTakenToItsSwitchOnByEnter() {
            Placement load = switched();

            page.the(".slots [data-load='" + load.id() + "']").sendKeys(Keys.ENTER);

            assertThat(page.lit()).contains(load.id());
            assertThat(page.the("#clock").getText())
                    .isEqualTo(String.format(
                            java.util.Locale.ROOT,
                            "%.2f s",
                            Math.max(
                                    0,
                                    load.onSeconds().orElseThrow()
                                            - layout.project().timingToleranceSeconds())));
        }

        @Test
        void leadsToItsRowInATable() {
            String load = switched().id();
            browser.script("document.querySelector(arguments[0]).focus()", ".slots [data-load='" + load + "']");

            page.the("#about [data-section='commissioning']").click();

            assertThat(browser.script(
                            "const box = document.querySelector(arguments[0]).getBoundingClientRect();"
                                    + " return box.top > 0 && box.bottom < innerHeight",
                            "#commissioning tr[data-load='" + load + "']"))
                    .isEqualTo(true);
        }
    }

    @Nested
    class AFilter {
        private void assertShown(Set<String> loads) {
            assertThat(page.loads(".slots .fits")).isEqualTo(loads);
            assertThat(page.loads("#circuits tr[data-load]:not(.gone)")).isEqualTo(loads);
            assertThat(page.the("#found").getText())
                    .startsWith(loads.size() + " of " + layout.placements().size() + " loads");
        }

        @Test
        void byGroupShowsItsLoads() {
            String group = switched().load().shutdownGroup().orElseThrow();

            page.choose("f-group", group);

            assertShown(those(each -> each.load().shutdownGroup().equals(java.util.Optional.of(group))));
        }

        @Test
        void byPanelLeavesOutTheOtherPanels() {
            String panel = switched().assignment().panel();

            page.choose("f-panel", panel);

            assertShown(those(each -> each.assignment().panel().equals(panel)));
            assertThat(browser.count(".board:not(.gone)")).isEqualTo(1);
            assertThat(browser.count(".panel:not(.gone)")).isEqualTo(1);
        }

        @Test
        void byPhaseShowsWhateverTouchesIt() {
            page.choose("f-phase", "B");

            assertShown(those(each -> each.phases().contains(Phase.B)));
        }

        @Test
        void bySearchGoesToTheFirstThatFits() {
            Set<String> named = those(each -> (each.id() + " " + each.load().name())
                    .toLowerCase(java.util.Locale.ROOT)
                    .contains("subwoofer"));
            assertThat(named).isNotEmpty();

            page.the("#search").sendKeys("SubWoofer");
            assertShown(named);
            browser.press(Keys.ENTER);

            assertThat(named).contains(browser.focused().getDomAttribute("data-load"));
        }

        @Test
        void togetherMustAllFitAndAreForgottenAtOnce() {
            page.choose("f-phase", "A");
            page.the("#search").sendKeys("no such load");
            assertShown(Set.of());

            page.the("#clear").click();
            browser.until("document.getElementById('found').textContent === ''");

            assertThat(browser.count(".board.gone, .panel.gone, tr.gone")).isZero();
        }
    }

    @Nested
    class TheKeyboardAlone {
        /** Tab stops tried: those before the panels' circuits, tables among them, are some sixty. */
        private static final int STOPS = 120;

        @Test
        void reachesEverythingThatAPointerCan() {
            Set<String> reached = new TreeSet<>();
            int seen = 0;

            browser.script("document.body.tabIndex = -1; document.body.focus()");
            for (int i = 0; i < STOPS; i++) {
                browser.press(Keys.TAB);
                WebElement focused = browser.focused();
                String id = focused.getDomAttribute("id");
                reached.add(id == null ? focused.getTagName() + "." + focused.getDomAttribute("class") : id);
                seen += "none".equals(focused.getCssValue("outline-style")) ? 0 : 1;
            }

            assertThat(reached)
                    .contains(
                            "a.skip", "play", "speed", "time", "earlier", "later", "to-peak", "node", "search",
                            "f-panel", "f-group", "f-phase", "clear");
            assertThat(reached).anyMatch(each -> each.startsWith("button.lamp"));
            assertThat(seen).as("tab stops with an outline").isEqualTo(STOPS);
        }

        @Test
        void theFirstStopSkipsToTheSequence() {
            browser.script("document.body.tabIndex = -1; document.body.focus()");

            browser.press(Keys.TAB, Keys.ENTER);

            assertThat(browser.script("return location.hash")).isEqualTo("#sequence");
        }

        @Test
        void arrowsGoFromBreakerToBreaker() {
            browser.script("document.querySelector('.slots button').focus()");
            String first = browser.focused().getDomAttribute("data-load");

            browser.press(Keys.ARROW_DOWN);
            String below = browser.focused().getDomAttribute("data-load");
            browser.press(Keys.ARROW_UP);

            assertThat(below).isNotEqualTo(first);
            assertThat(browser.focused().getDomAttribute("data-load")).isEqualTo(first);
            assertThat(browser.count(".board:first-child .slots button[tabindex='0']"))
                    .isEqualTo(1);
        }
    }
}
