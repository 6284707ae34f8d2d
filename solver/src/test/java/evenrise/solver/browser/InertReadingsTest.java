package evenrise.solver.browser;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.AssignmentBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.Needs;
import evenrise.model.file.ReadingsFile;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.commissioning.FilledSheets;
import evenrise.solver.commissioning.ReadSheets;
import evenrise.solver.commissioning.SavedTables;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.SiteForm;
import evenrise.solver.rendering.CommissioningPage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The commissioning page does nothing but what it is for, whatever things are called. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class InertReadingsTest {
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

    /** All loads called as the names say; the last name is that of the project, too. */
    private static Layout layout(List<String> names) {
        Project project = aProject()
                .panels(aPanel("P1").slots(42))
                .loads(names.stream()
                        .map(name -> aLoad(name).name(name).unswitched())
                        .toArray(LoadBuilder[]::new))
                .build();
        return Layout.of(
                project,
                aPlan().assignments(IntStream.range(0, names.size())
                                .mapToObj(i -> anAssignment(names.get(i)).at("P1", i + 1))
                                .toArray(AssignmentBuilder[]::new))
                        .build());
    }

    private Path open(Layout layout, String name) throws IOException {
        Imprint imprint = new Imprint(name, name, "2026-01-02", "0123456789abcdef".repeat(4), "0.0.0");
        Path page =
                Files.writeString(folder.resolve("readings.html"), CommissioningPage.of(imprint, SiteForm.of(layout)));
        browser.open(page);
        browser.script("localStorage.clear(); document.getElementById('where').value = 'P1';"
                + " document.getElementById('where').dispatchEvent(new Event('input'))");
        return page;
    }

    private String saved() {
        browser.script(
                "window.took = []; URL.createObjectURL = blob => { took.push(blob); return '#'; };"
                        + " HTMLAnchorElement.prototype.click = function () {};"
                        + " document.querySelectorAll('#cards [data-key=idle_a]').forEach((input, i) => { input.value = '0.' + (i + 1);"
                        + " input.dispatchEvent(new Event('input', { bubbles: true })); }); document.getElementById('save').click()");
        return (String) browser.scriptThatWaits("const done = arguments[0]; took[0].text().then(done)");
    }

    @Test
    void noNameActsOnItAndEachComesBack() throws IOException {
        List<String> names = InertPageTest.names();
        open(layout(names.stream().map(name -> "plain" + names.indexOf(name)).toList()), "plain");
        Object elements = browser.script("return document.querySelectorAll('*').length");
        Layout layout = layout(names);
        Path page = open(layout, String.join(" ", names));

        Object now = browser.script("return document.querySelectorAll('*').length");
        String shown = (String) browser.script("return document.querySelector('main').textContent");
        String text = saved();
        ReadSheets read = FilledSheets.read(
                Map.of(
                        "x.readings.json",
                        SavedTables.of(
                                ReadingsFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "x")
                                        .value()
                                        .orElseThrow())),
                layout.project(),
                layout.plan(),
                Optional.empty());

        assertThat(now).isEqualTo(elements);
        assertThat(shown).doesNotContain("\u202e");
        assertThat(browser.showsADialog()).isFalse();
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests(page)).isEmpty();
        assertThat(read.problems()).isEmpty();
        assertThat(read.readings().poles()).extracting(each -> each.load()).containsExactlyElementsOf(names);
    }

    @Test
    void noForeignScriptWouldRunAndAllCautionsStand() throws IOException {
        open(layout(List.of("plain")), "plain");

        browser.script("const foreign = document.createElement('script'); foreign.textContent = 'window.ran = true';"
                + " document.body.append(foreign)");

        assertThat(browser.script("return window.ran === undefined")).isEqualTo(true);
        assertThat(browser.complaints().toString()).contains("Content Security Policy");
        assertThat(Cautions.ALL)
                .allSatisfy(each -> assertThat(browser.text(".cautions")).contains(each));
    }
}
