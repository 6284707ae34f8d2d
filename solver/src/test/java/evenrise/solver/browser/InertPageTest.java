package evenrise.solver.browser;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.AssignmentBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.Needs;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.document.Document;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A page does nothing but what it is for: no name acts on it, nothing is asked of a network, nothing goes wrong. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class InertPageTest {
    private static final String EVERYTHING = "return document.querySelectorAll('*').length";

    @TempDir
    private Path folder;

    private Browser browser;

    @BeforeAll
    void openABrowser() {
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    static List<String> names() {
        return List.of(
                "<script>alert(1)</script>",
                "</script><img src=x onerror=alert(1)>",
                "<!--<script>",
                "<svg onload=alert(1)>",
                "<img src=\"http://evenrise.example/x.png\">",
                "\"><iframe src=\"javascript:alert(1)\"></iframe>",
                "' onmouseover='alert(1)",
                "\u202egnp.exe",
                "x".repeat(10_000),
                "\uD83D\uDE00 emoji & <tag>",
                "\\u003cscript>alert(1)\\u003c/script>",
                "{{ document }} {% raw %}");
    }

    /** Whatever can have a name has this one. */
    private static Document document(String name) {
        Project project = aProject()
                .boards(aBoard("B1"))
                .loads(aLoad(name).name(name), aLoad("other"))
                .build();
        return DrawnPages.of(Layout.of(
                        project,
                        aPlan().assignments(
                                        anAssignment(name).at("P1", 1).on("B1", 1),
                                        anAssignment("other").at("P1", 2).on("B1", 2))
                                .build()))
                .document();
    }

    private void assertQuiet(PlanPage page) {
        assertThat(browser.showsADialog()).isFalse();
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests(page.file)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("names")
    void noNameActsOnThePage(String name) {
        PlanPage.open(browser, document("plain"), folder);
        browser.script("document.querySelector('.slots button').focus()");
        Object elements = browser.script(EVERYTHING);
        PlanPage page = PlanPage.open(browser, document(name), folder);

        browser.script("document.querySelector('.slots button').focus()");

        assertThat(browser.script(EVERYTHING)).isEqualTo(elements);
        assertThat((String) browser.script("return document.getElementById('about').textContent"))
                .doesNotContain("\u202e");
        browser.script("document.getElementById('to-peak').click()");
        page.frame();
        assertQuiet(page);
    }

    /** Also where long tables are drawn later. */
    @Test
    void noNameActsFromATableThatIsDrawnLater() {
        String name = "</script><img src=x onerror=alert(1)>";
        int loads = 301;
        Project project = aProject()
                .panels(aPanel("P1").slots(2 * loads))
                .loads(IntStream.range(0, loads)
                        .mapToObj(i -> aLoad(name + i).name(name).unswitched())
                        .toArray(LoadBuilder[]::new))
                .build();
        PlanPage page = PlanPage.open(
                browser,
                DrawnPages.of(Layout.of(
                                project,
                                aPlan().assignments(IntStream.range(0, loads)
                                                .mapToObj(i ->
                                                        anAssignment(name + i).at("P1", i + 1))
                                                .toArray(AssignmentBuilder[]::new))
                                        .build()))
                        .document(),
                folder);
        assertThat(browser.count("#labels tr")).isZero();

        browser.script("document.getElementById('labels').scrollIntoView()");
        browser.until("document.querySelectorAll('#labels tbody tr').length === " + loads);

        assertThat(browser.count("img, iframe")).isZero();
        assertQuiet(page);
    }

    /** The policy of the page is the second wall: even a script that got in would not run. */
    @Test
    void noForeignScriptWouldRun() {
        PlanPage.open(browser, document("plain"), folder);

        browser.script("const foreign = document.createElement('script'); foreign.textContent = 'window.ran = true';"
                + " document.body.append(foreign)");

        assertThat(browser.script("return window.ran === undefined")).isEqualTo(true);
        assertThat(browser.complaints().toString()).contains("Content Security Policy");
    }

    @ParameterizedTest
    @ValueSource(strings = {"meridian-hall", "lumen-theatre", "willow-chapel", "harbour-arena"})
    void inUseItAsksNothingAndComplainsOfNothing(String dataset) {
        PlanPage page = PlanPage.open(browser, DrawnPages.of(dataset).document(), folder);

        page.scrubTo(12);
        page.chooseNode(1);
        page.choose("f-phase", "A");
        browser.script("document.querySelector('.slots button').focus()");
        browser.script("dispatchEvent(new Event('beforeprint'))");
        page.frame();

        assertThat(browser.count("script.later")).isZero();
        assertThat(browser.count("#commissioning tbody tr"))
                .isEqualTo(DrawnPages.of(dataset).layout().placements().size());
        assertQuiet(page);
    }
}
