package evenrise.solver.browser;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever things are called, the desk shows it and does nothing of it. */
@Needs({"chromium", "chromedriver"})
class InertDeskTest {
    private static final String NAME = "<img src=x onerror=alert(1)>";
    private static final String OTHER = "\u202egnp.exe</script><script>alert(2)</script>";

    private static final String PORTFOLIO =
            "project,variant,seed,price,objective,gap_pct,peak_inrush_a,supply_imbalance_pct,worst_panel_imbalance_pct,"
                    + "duration_s,hard_rules_broken,limits_broken,checks_not_made,answer,failure\r\n"
                    + NAME + ",{{x}},1,,12.5,,100,1,1,2,0,0,0," + "ab".repeat(32) + ",\r\n"
                    + NAME + "," + NAME + ",2,,,,,,,,,,,," + NAME + "\r\n";

    @TempDir
    private Path folder;

    @Test
    void namesAreTextsInEveryView() throws WriteFailed, IOException {
        Project project = aProject()
                .name(NAME)
                .boards(aBoard("B1"))
                .loads(aLoad(NAME).name(OTHER), aLoad("{{x}}").name("=cmd()"))
                .build();
        ProjectFile.write(project, folder.resolve("project.json"), Format.JSON);
        Files.writeString(folder.resolve("portfolio.csv"), PORTFOLIO);

        try (Browser browser = new Browser();
                DeskWindow window = DeskWindow.onFolder(browser, folder)) {
            for (List<String> view : List.of(
                    List.of("plan", ".tray .cell"),
                    List.of("loads", ".grid .body .row"),
                    List.of("time", "svg.lanes"),
                    List.of("why", ".broken li"),
                    List.of("estimate", "#estimate-begin"),
                    List.of("events", ".happening"),
                    List.of("documents", "#draw"),
                    List.of("portfolio", ".portfolio tbody th"),
                    List.of("rework", "#cure-begin"),
                    List.of("kept", "table"))) {
                window.turnTo(view.get(0), view.get(1));
            }
            window.turnTo("documents", "#doc-date");
            browser.until("document.getElementById('doc-date').value !== ''");
            browser.script(
                    "document.querySelectorAll('[name=kind]').forEach(each => { each.checked = each.value === 'html' || each.value === 'csv'; })");
            window.click("#draw");
            browser.until("document.querySelector('.drawn:not([hidden])')");
            window.click("[data-look=tables]");
            browser.until("document.querySelector('.tabled tbody tr')");
            window.click("[data-look=page]");
            browser.until("document.querySelector('.framed iframe').dataset.loaded");
            handsOverAFileCalledSo(browser, window);
            window.turnTo("plan", ".tray .cell");
            browser.element(".tray .cell").click();

            assertThat(browser.text("#holding b")).isEqualTo(NAME);
            assertThat(browser.text("#name")).isEqualTo(NAME);
            assertThat(browser.text("#holding")).contains("?gnp.exe</script>");
            assertThat(browser.count("main img, main script, #holding img, header h1 img"))
                    .isZero();
            assertThat(browser.showsADialog()).isFalse();
            assertThat(browser.complaints()).isEmpty();
        }
    }

    /** A file's name and what stands in it are as little markup as a project's. */
    private static void handsOverAFileCalledSo(Browser browser, DeskWindow window) {
        window.turnTo("measured", "#site-files");
        browser.script(
                "const data = new DataTransfer(); data.items.add(new File([arguments[1]], arguments[0]));"
                        + "document.querySelector('.drop').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }))",
                NAME + ".csv",
                "load,idle_a\n" + NAME + ",1\n" + NAME + "x,2\n");
        browser.until("document.querySelector('.measured-found li')");
        assertThat(browser.text(".measured-found")).contains(NAME);
        assertThat(browser.text(".site")).contains("_img src_x onerror_alert_1__.csv");
    }
}
