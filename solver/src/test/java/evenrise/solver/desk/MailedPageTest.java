package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.desk.DocumentAnswers.MailedView;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The page to mail lies in a folder of its own, and its plan is kept. */
class MailedPageTest {
    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() {
        routes = Hall.routes(Hall.in(folder));
    }

    private MailedView made(String revision) {
        return (MailedView)
                asked("/api/documents/mail", "{\"revision\": \"" + revision + "\", \"date\": \"2031-05-06\"}");
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void isWrittenAndCanBeHadAsItWasWritten() throws IOException {
        MailedView made = made("A");

        byte[] had = routes.piece("/mailed/" + made.made() + "/plan.html")
                .orElseThrow()
                .bytes();
        assertThat(folder.resolve("mailed/plan.html")).hasBinaryContent(had);
        assertThat(new String(had, StandardCharsets.UTF_8)).contains("2031-05-06");
        assertThat(folder.resolve("mailed/readings.html")).exists();
        assertThat(made.files())
                .allSatisfy(each ->
                        assertThat(folder.resolve("mailed/" + each.name())).hasSize(each.bytes()));
    }

    @Test
    void keepsItsPlanOnceAndAnotherPlanUnderAnotherName() {
        assertThat(made("A").keptAs()).isEqualTo("mailed A");
        assertThat(made("A").keptAs()).isEqualTo("mailed A");
        asked("/api/move", "{\"load\": \"lamp\", \"panel\": \"P1\", \"slot\": 7}");

        assertThat(made("A").keptAs()).isEqualTo("mailed A 2");
        assertThat(folder.resolve("mailed A.plan.json")).exists();
        assertThat(folder.resolve("mailed A 2.plan.json")).exists();
    }

    @ParameterizedTest
    @CsvSource({"'', mailed A", "../../x, mailed x", "B 7/2, mailed B 7 2", "???, mailed A"})
    void keepsItUnderANameWhateverTheRevisionIsCalled(String revision, String name) {
        assertThat(made(revision).keptAs()).isEqualTo(name);
    }

    @Test
    void whatSomebodyElsePutThereIsNotOverwritten() throws IOException {
        Files.createDirectory(folder.resolve("mailed"));
        Files.writeString(folder.resolve("mailed/plan.html"), "mine");

        assertThatThrownBy(() -> made("A")).hasMessageContaining("no earlier report wrote");
        assertThat(folder.resolve("mailed/plan.html")).hasContent("mine");
        assertThat(folder.resolve("mailed A.plan.json")).doesNotExist();
    }

    /** Looked at in a window of its own it has no rights at the desk either. */
    @Test
    void isServedByItsOwnPolicy() {
        made("A");

        String policy =
                routes.piece("/mailed/1/plan.html").orElseThrow().policy().orElseThrow();
        assertThat(Arrays.asList(policy.split("; "))).contains("default-src 'none'", "sandbox allow-scripts");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/mailed/1/../project.json", "/mailed/1/project.json", "/mailed/2/plan.html", "/mailed/plan.html"
            })
    void nothingElseIsServedThere(String path) {
        made("A");

        assertThat(routes.piece(path)).isEmpty();
    }
}
