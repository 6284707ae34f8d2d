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
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever things are called, the desk shows it and does nothing of it. */
@Needs({"chromium", "chromedriver"})
class InertDeskTest {
    private static final String NAME = "<img src=x onerror=alert(1)>";
    private static final String OTHER = "\u202egnp.exe</script><script>alert(2)</script>";

    @TempDir
    private Path folder;

    @Test
    void namesAreTextsInEveryView() throws WriteFailed {
        Project project = aProject()
                .name(NAME)
                .boards(aBoard("B1"))
                .loads(aLoad(NAME).name(OTHER), aLoad("{{x}}").name("=cmd()"))
                .build();
        ProjectFile.write(project, folder.resolve("project.json"), Format.JSON);

        try (Browser browser = new Browser();
                DeskWindow window = DeskWindow.onFolder(browser, folder)) {
            for (List<String> view : List.of(
                    List.of("plan", ".tray .cell"),
                    List.of("loads", ".grid .body .row"),
                    List.of("time", "svg.lanes"),
                    List.of("why", ".broken li"),
                    List.of("estimate", "#estimate-begin"),
                    List.of("kept", "table"))) {
                window.turnTo(view.get(0), view.get(1));
            }
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
}
