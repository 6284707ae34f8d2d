package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.ProjectFile;
import evenrise.model.project.Load;
import evenrise.solver.recording.DrawnStart;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
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

/** What was measured, from the files to the record: by mouse, by keyboard alone and on a phone's size. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class DeskMeasuredTest {
    private static final Path SITE = Path.of("../datasets/lantern-yard/site");
    private static final int MOST_TABS = 80;

    @TempDir
    private static Path folder;

    private Browser browser;
    private DeskWindow window;

    @BeforeAll
    void openADesk() {
        browser = new Browser();
        window = DeskWindow.asBuilt(browser, "lantern-yard", folder);
    }

    @AfterAll
    void closeIt() {
        window.close();
        browser.close();
    }

    @BeforeEach
    void turnToIt() {
        browser.window(1280, 900);
        window.turnTo("measured", "#site-files");
        browser.until("document.querySelector('.measured').dataset.state");
    }

    @AfterEach
    void beginAnew() {
        window.takeEverythingBack();
        answered(() -> browser.script("const it = document.querySelector('#another-visit'); if (it) it.click();"
                + " else location.hash = '#plan'; location.hash = '#measured'"));
        browser.until("document.querySelector('.measured').dataset.state === 'empty'");
        assertThat(browser.complaints()).isEmpty();
    }

    private void answered(Runnable deed) {
        Object before = browser.script("return document.querySelector('.measured').dataset.told");
        deed.run();
        browser.until("document.querySelector('.measured').dataset.told !== '" + before
                + "' && !document.querySelector('.measured').hasAttribute('aria-busy')");
    }

    private void handOver(Path... files) {
        answered(() -> browser.element("#site-files")
                .sendKeys(Stream.of(files)
                        .map(each -> each.toAbsolutePath().normalize().toString())
                        .collect(Collectors.joining("\n"))));
    }

    private void filledSheets() {
        handOver(SITE.resolve("commissioning.csv"), SITE.resolve("tests.csv"), SITE.resolve("meters.csv"));
    }

    private double running(String load) {
        return ProjectFile.read(window.folder.resolve("project.json")).value().orElseThrow().loads().stream()
                .filter(each -> each.id().equals(load))
                .mapToDouble(Load::runningAmps)
                .findFirst()
                .orElseThrow();
    }

    private Path log(String headers, String without) throws IOException {
        return Files.write(folder.resolve("log.csv"), DrawnStart.of(DrawnStart.yard(), headers, without));
    }

    @Test
    void filledSheetsSayWhatDiffersWithItsLikelyCause() {
        filledSheets();

        assertThat(browser.text("#verdict")).isEqualTo("Measured: unsafe");
        assertThat(window.texts(".differences tbody tr"))
                .first()
                .asString()
                .contains("main-3", "the sheet says that it failed", "no light on the amplifier");
        assertThat(browser.text(".verdict")).contains("4 faults", "allowed are 80 % of 63 A");
        long shown = browser.count(".differences tbody tr");
        browser.element("#also-less").click();
        assertThat(browser.count(".differences tbody tr")).isEqualTo(shown + 2);
    }

    @Test
    void nothingIsLoweredThatNobodySawInFullUse() {
        double stated = running("sub-1");
        filledSheets();

        browser.element("#take-measured").click();
        window.untilSaid("The project holds what was measured");
        assertThat(running("sub-1")).isGreaterThanOrEqualTo(stated);
        browser.until("document.querySelector('.measured').dataset.state === 'taken'");
        assertThat(browser.element("#take-measured").isEnabled()).isFalse();
        window.takeBack();
        browser.until("document.querySelector('.measured').dataset.state === 'open'");

        answered(() -> browser.element("[id='full-use sub-1 running_a']").click());
        assertThat(browser.focused().getDomAttribute("id")).isEqualTo("full-use sub-1 running_a");
        browser.element("#take-measured").click();
        browser.until("document.querySelector('.measured').dataset.state === 'taken'");
        assertThat(running("sub-1")).isLessThan(stated);
    }

    @Test
    void aRecorderIsAskedForItsColumnsOnceAndItsCurvesStandOverThePlan() throws IOException {
        String dead = DrawnStart.alone(DrawnStart.yard());
        handOver(log("Zeitpunkt,Kanal 1,Kanal 2,Kanal 3", dead));

        assertThat(window.texts(".measured summary")).contains("Which column of the recording is what?");
        List<String> meanings = List.of("time", "A", "B", "C");
        List<String> headers = List.of("Zeitpunkt", "Kanal 1", "Kanal 2", "Kanal 3");
        for (int i = 0; i < meanings.size(); i++) {
            window.choose("[data-header='" + headers.get(i) + "']", meanings.get(i));
        }
        answered(() -> browser.element("#keep-columns").click());

        assertThat(browser.count(".overlay .recorded")).isEqualTo(3);
        assertThat(browser.text(".recording")).contains("as planned", "'Kanal 2': current of phase B");
        assertThat(window.texts(".differences tbody tr"))
                .anyMatch(each -> each.contains(dead) && each.contains("does not come on"));
        assertThat(browser.text("#verdict")).isEqualTo("Measured: differs");
        assertThat(window.folder.resolve("project.recorders.json")).exists();
        handOver(log("Zeitpunkt,Kanal 1,Kanal 2,Kanal 3", ""));
        assertThat(window.texts(".measured summary")).doesNotContain("Which column of the recording is what?");
        assertThat(browser.count(".overlay .recorded")).isEqualTo(3);
    }

    @Test
    void filesAreDroppedAndTakenAway() {
        answered(
                () -> browser.script(
                        "const data = new DataTransfer();"
                                + "data.items.add(new File(['load,phase,idle_a\\nmixer,B,2.4\\n'], 'desk.csv'));"
                                + "document.querySelector('.drop').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }))"));

        assertThat(browser.text("#verdict")).isEqualTo("Measured: not enough measured");
        answered(() -> browser.element("[aria-label='Take away desk.csv']").click());
        assertThat(browser.count("#verdict")).isZero();
    }

    @Test
    void readingsArePastedAndTakenByTheKeyboardAlone() {
        double stated = running("main-1");
        browser.script("document.getElementById('work').focus()");
        tabTo("summary");
        browser.press(Keys.ENTER);
        tabTo("#pasted-readings");
        browser.press("load,phase,running_a" + Keys.chord(Keys.SHIFT, Keys.ENTER) + "main-1,A,10.4");
        tabTo("#read-pasted");
        answered(() -> browser.press(Keys.ENTER));
        assertThat(window.texts(".changes tbody th")).contains("main-1");
        tabTo("#take-measured");
        browser.press(Keys.ENTER);
        window.untilSaid("The project holds what was measured");
        browser.until("document.querySelector('.measured').dataset.state === 'taken'");
        assertThat(running("main-1")).isGreaterThan(Math.max(stated, 10.4));
    }

    @Test
    void fewMovesAreLookedForFromHereInOneStep() throws IOException {
        handOver(Files.writeString(folder.resolve("tuesday.csv"), "load,phase,running_a\nmain-1,A,10.4\n"));
        assertThat(browser.element("#few-moves").isEnabled()).isFalse();
        browser.element("#take-measured").click();
        browser.until("!document.getElementById('few-moves').disabled");
        window.click("#few-moves");

        browser.until("document.querySelector('.rework')?.dataset.state === 'running'");
        window.click("#cure-stop");
        browser.until("document.querySelector('.rework').dataset.state === 'found'");
        assertThat(browser.text("#cure-headline")).isNotEmpty();
        window.turnTo("measured", "#site-files");
    }

    /** Presses Tab until what has the focus is such. */
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
    void whatCannotBeReadIsSaidByFileAndLine() throws IOException {
        handOver(Files.writeString(folder.resolve("monday.csv"), "load,phase,idle_a\nmixer,B,lots\n"));

        assertThat(browser.text(".measured-found")).contains("monday.csv line 2", "lots");
        assertThat(browser.count("#take-measured")).isZero();
    }

    @Test
    void theRecordOfThePlantAsBuiltIsWrittenBesideTheProject() {
        filledSheets();
        browser.element("#write-record").click();
        browser.until("document.querySelector('#record-written')");

        assertThat(window.texts(".files li")).contains("commissioning.pdf", "project-as-built.json", "open-points.csv");
        assertThat(window.folder.resolve("as-built/commissioning.html"))
                .content()
                .contains("unsafe");
    }

    @Test
    void fitsAPhoneWithoutABarrier() throws IOException {
        browser.window(360, 760);
        filledSheets();
        handOver(log("time_s,A,B,C", "mixer"));

        assertThat(browser.script("return document.documentElement.scrollWidth"))
                .isEqualTo(360L);
        assertThat(window.barriers()).isEmpty();
        answered(() -> browser.element("[id='full-use sub-2 running_a']").click());
        assertThat(browser.element("[id='full-use sub-2 running_a']").isSelected())
                .isTrue();
    }
}
