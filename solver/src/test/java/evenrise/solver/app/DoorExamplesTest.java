package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of docs/api.md, each compiled and run here; the page shows what stands between the marks. */
class DoorExamplesTest {
    private static final Path PAGE = Path.of("..", "docs", "api.md");
    private static final Path SOURCE =
            Path.of("src", "test", "java", "evenrise", "solver", "app", "DoorExamplesTest.java");

    private static final Pattern SHOWN =
            Pattern.compile("<!-- example: ([a-z ]+) -->\\n```java\\n(.*?)```", Pattern.DOTALL);
    private static final Pattern RUN =
            Pattern.compile("// example: ([a-z ]+)\\n(.*?)\\n *// end of example", Pattern.DOTALL);

    @TempDir
    private Path scratch;

    private Path project;
    private Path plan;
    private Path folder;

    @BeforeEach
    void aHall() throws IOException {
        project =
                Files.copy(Path.of("..", "datasets", "tin-shed", "project.json"), scratch.resolve("hall.project.json"));
        plan = scratch.resolve("hall.plan.json");
        folder = scratch.resolve("documents");
    }

    @Test
    void threeLinesPlanAProject() {
        // example: three lines
        PlanRequest request =
                PlanRequest.of(project).withEffort(Effort.ofMoves(2000)).withTarget(PlanTarget.file(plan));
        PlanResult result = new Jobs().plan(request);
        String verdict = result.evaluation().assessment().headline();
        // end of example

        assertThat(PlanFile.read(plan).value()).contains(result.plan());
        assertThat(result.plan().assessment().orElseThrow().headline()).isEqualTo(verdict);
    }

    @Test
    void aPlanIsJudged() {
        threeLinesPlanAProject();

        // example: audit
        AuditResult audit = new Jobs().audit(AuditRequest.of(project, plan));
        List<String> screen = audit.text(TextStyle.PLAIN);
        String json = audit.json();
        // end of example

        assertThat(screen.get(0)).isEqualTo("Assessment");
        assertThat(json).startsWith("{").contains("\"evenrise-audit/1\"");
    }

    @Test
    void tablesAreTakenIn() {
        Path tables = scratch.resolve("loads.xlsx");

        // example: tables
        new Jobs().export(new ExportRequest(Source.file(project), false, tables));
        TakeInResult taken = new Jobs().takeIn(new TakeInRequest(project, tables, project, false));
        List<String> rows = taken.changes();
        // end of example

        assertThat(rows).isEmpty();
    }

    @Test
    void documentsAreWritten() {
        threeLinesPlanAProject();

        // example: documents
        DocumentSet tables = DocumentSet.into(folder).withFormats(List.of(DocumentFormat.CSV));
        ReportResult report = new Jobs().report(ReportRequest.of(project, plan, tables));
        List<String> names = report.written();
        // end of example

        assertThat(names)
                .contains("circuits.csv")
                .allSatisfy(name -> assertThat(folder.resolve(name)).isRegularFile());
    }

    @Test
    void aJobIsHeardAndCancelled() {
        // example: listen and cancel
        CancelSwitch stop = new CancelSwitch();
        JobListener listener = progress -> progress.search().ifPresent(any -> stop.cancel());
        PlanResult early = new Jobs().plan(PlanRequest.of(project), new JobControl(listener, stop));
        boolean wasCancelled = early.search().wasCancelled();
        // end of example

        assertThat(wasCancelled).isTrue();
        assertThat(early.plan().assignments()).isNotEmpty();
    }

    @Test
    void aProjectIsBuilt() {
        // example: built
        Project venue = new Jobs().generate(GenerateRequest.of(1));
        Project renamed = venue.withName("North hall");
        PlanResult planned = new Jobs().plan(PlanRequest.of(Source.of(renamed)).withEffort(Effort.ofMoves(500)));
        // end of example

        assertThat(planned.evaluation().project().name()).isEqualTo("North hall");
        assertThat(planned.evaluation().project().loads()).isEqualTo(venue.loads());
    }

    @Test
    void whatCannotBeDoneIsSaid() {
        // example: failure
        try {
            new Jobs().plan(PlanRequest.of(Path.of("nowhere.project.json")));
        } catch (JobFailed e) {
            List<String> problems = e.messages();
            // end of example
            assertThat(problems).singleElement().asString().contains("nowhere.project.json");
            assertThat(e.reason()).isEqualTo(JobFailed.Reason.INPUT);
            return;
        }
        throw new AssertionError("expected a failure");
    }

    @Test
    void thePageShowsWhatIsRunHere() throws IOException {
        Map<String, String> shown = blocks(SHOWN, Files.readString(PAGE));
        Map<String, String> run = blocks(RUN, Files.readString(SOURCE));

        assertThat(shown).hasSize(7).isEqualTo(run);
    }

    /** Each example's words, however its lines are broken; a brace left open by its mark is closed on the page. */
    private static Map<String, String> blocks(Pattern form, String text) {
        Map<String, String> blocks = new TreeMap<>();
        Matcher matcher = form.matcher(text);
        while (matcher.find()) {
            String words = Arrays.stream(matcher.group(2).strip().split("\\s+")).collect(Collectors.joining(" "));
            blocks.put(
                    matcher.group(1),
                    words.replaceAll("\\s*\\.\\s*", ".").replaceAll("\\( ", "(").replaceAll("[ }]+$", ""));
        }
        return blocks;
    }
}
