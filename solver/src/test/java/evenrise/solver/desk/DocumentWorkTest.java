package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.desk.DocumentAnswers.DocumentsView;
import evenrise.solver.desk.DocumentAnswers.DrawnView;
import evenrise.solver.desk.DocumentAnswers.FileTables;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Documents are written as they were looked at, and where they were asked to go, or not at all. */
class DocumentWorkTest {
    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() {
        routes = Hall.routes(Hall.in(folder));
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    private DrawnView drawn(String formats) {
        return ((DocumentsView)
                        asked("/api/documents/draw", "{\"formats\": [" + formats + "], \"date\": \"2031-05-06\"}"))
                .drawn()
                .orElseThrow();
    }

    private void write(String more) {
        asked("/api/documents/write", "{\"drawn\": 1" + more + "}");
    }

    @Test
    void whatIsWrittenIsWhatWasLookedAt() throws IOException {
        DrawnView drawn = drawn("\"html\", \"csv\"");
        byte[] seen = routes.piece("/drawn/1/plan.html").orElseThrow().bytes();
        FileTables landing = (FileTables) asked("/api/documents/tables", "{\"drawn\": 1, \"file\": \"landing.csv\"}");

        write("");

        assertThat(folder.resolve("documents/plan.html")).hasBinaryContent(seen);
        assertThat(drawn.files())
                .allSatisfy(each ->
                        assertThat(folder.resolve("documents/" + each.name())).hasSize(each.bytes()));
        assertThat(new String(seen, StandardCharsets.UTF_8)).contains("2031-05-06");
        assertThat(landing.sheets().get(0).rows()).anyMatch(row -> row.contains("amp-1"));
        assertThat(Files.list(folder.resolve("documents")))
                .hasSize(drawn.files().size() + 1);
    }

    /** As soon as the desk tells that something is drawn, somebody stops it. */
    @Test
    void whatIsStoppedIsDrawnNoFurtherAndNothingOfItIsKept() {
        Desk desk = Hall.desk(Hall.in(folder));
        DeskRoutes own = Hall.routes(desk, folder);
        List<String> told = new ArrayList<>();
        desk.listen(event -> {
            told.add(event.kind() + " " + event.words());
            if (event.words().startsWith("writing tables")) {
                own.of("POST", "/api/documents/stop").orElseThrow().answer("{}".getBytes(StandardCharsets.UTF_8));
            }
        });

        assertThatThrownBy(() -> own.of("POST", "/api/documents/draw")
                        .orElseThrow()
                        .answer("{\"formats\": [\"html\"]}".getBytes(StandardCharsets.UTF_8)))
                .hasMessageContaining("stopped before everything was drawn");
        assertThat(told).anyMatch(each -> each.startsWith("documents judging the plan"));
        DocumentsView after =
                (DocumentsView) own.of("GET", "/api/documents").orElseThrow().answer(new byte[0]);
        assertThat(after.drawn()).isEmpty();
    }

    /** The hash on every page is that of the file in the folder, however that is laid out. */
    @Test
    void thePageNamesTheProjectsFileAsItLiesThere() throws IOException {
        drawn("\"html\"");

        String hash = DeskFiles.sha256(Files.readAllBytes(folder.resolve("project.json")));
        assertThat(new String(routes.piece("/drawn/1/plan.html").orElseThrow().bytes(), StandardCharsets.UTF_8))
                .contains(hash.substring(0, 12));
    }

    @Test
    void aPlanThatHasChangedSinceIsDrawnAnewFirst() {
        drawn("\"csv\"");
        asked("/api/move", "{\"load\": \"lamp\", \"panel\": \"P1\", \"slot\": 7}");

        assertThatThrownBy(() -> write("")).hasMessageContaining("Draw them anew");
        assertThat(folder.resolve("documents")).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(strings = {"..", "../elsewhere", "/tmp/x", "a/b", "", ".hidden", "C:", "x\\\\y"})
    void noNameOfAFolderLeadsOut(String name) {
        drawn("\"csv\"");

        assertThatThrownBy(() -> write(", \"folder\": \"" + name + "\"")).hasMessageContaining("called");
        assertThat(folder.resolveSibling("elsewhere")).doesNotExist();
    }

    @Test
    void aLinkToAnotherPlaceIsNotFollowed(@TempDir Path other) throws IOException {
        Files.createSymbolicLink(folder.resolve("documents"), other);
        drawn("\"csv\"");

        assertThatThrownBy(() -> write("")).hasMessageContaining("another place");
        assertThat(Files.list(other)).isEmpty();
    }

    /** It may run its own scripts, known by hash, and has no rights at the desk. */
    @Test
    void thePageIsFramedByItsOwnPolicyAsIfItCameFromElsewhere() {
        drawn("\"html\"");

        String policy =
                routes.piece("/drawn/1/plan.html").orElseThrow().policy().orElseThrow();
        assertThat(Arrays.asList(policy.split("; ")))
                .contains("default-src 'none'", "sandbox allow-scripts", "frame-ancestors 'self'");
        assertThat(policy).contains("script-src 'sha256-").doesNotContain("unsafe", "allow-same-origin", "connect-src");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/drawn/1/../project.json",
                "/drawn/1/project.json",
                "/drawn/1/plan-a4.pdf",
                "/drawn/1/plan-a4.pdf/0.png",
                "/drawn/1/plan.csv/99999.png",
                "/drawn/2/plan.html",
                "/drawn/999999999/plan.html",
                "/drawn/plan.html"
            })
    void nothingElseIsServedThere(String path) {
        drawn("\"html\"");

        assertThat(routes.piece(path)).isEmpty();
    }

    @Test
    void theTitleBlockIsKeptForTheNextTime() {
        asked(
                "/api/documents/draw",
                "{\"formats\": [\"csv\"], \"title\": {\"format\": \"evenrise-title/1\", \"client\": \"Riverside\"}}");

        DocumentsView next =
                (DocumentsView) routes.of("GET", "/api/documents").orElseThrow().answer(new byte[0]);
        assertThat(next.title().client()).contains("Riverside");
        assertThat(folder.resolve("title-block.json")).content().contains("evenrise-title/1");
    }
}
