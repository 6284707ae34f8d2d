package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.Json;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.handout.PlanDigest;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.readings.SavedPole;
import evenrise.model.readings.SavedReadings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was saved at the panel is taken by {@code rework --measured} as a table of the same readings is. */
class SavedReadingsReworkTest {
    private static final Path YARD = Path.of("..", "datasets", "lantern-yard");
    private static final Path LIST = YARD.resolve("measured.csv");

    private final Reading<Project> project = ProjectFile.read(YARD.resolve("project.json"));
    private final Plan built = PlanFile.read(
                    YARD.resolve("built.plan.json"), project.value().orElseThrow())
            .value()
            .orElseThrow();

    @TempDir
    private Path scratch;

    private Shell.Result rework(Path measured, String folder) {
        return new Shell(built)
                .run(
                        "rework",
                        YARD.resolve("project.json").toString(),
                        YARD.resolve("built.plan.json").toString(),
                        "--to",
                        YARD.resolve("built.plan.json").toString(),
                        "--measured",
                        measured.toString(),
                        "-o",
                        scratch.resolve(folder).toString());
    }

    private static SavedPole pole(String row) {
        String[] cells = row.split(",", -1);
        return SavedPole.builder()
                .load(cells[0])
                .phase(Optional.of(Phase.valueOf(cells[1])))
                .runningAmps(
                        cells[2].isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cells[2])))
                .idleAmps(cells[3].isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cells[3])))
                .build();
    }

    private Path saved(List<SavedPole> poles, String planSha256) throws IOException {
        SavedReadings readings = SavedReadings.builder()
                .project("Lantern Yard")
                .projectSha256(project.sha256())
                .planSha256(planSha256)
                .poles(poles)
                .build();
        return Files.writeString(scratch.resolve("yard.readings.json"), Json.of(readings));
    }

    private List<SavedPole> poles() throws IOException {
        List<SavedPole> poles = new ArrayList<>();
        for (String row : Files.readAllLines(LIST)) {
            if (!row.startsWith("load,") && !row.isBlank()) {
                poles.add(pole(row));
            }
        }
        return poles;
    }

    @Test
    void makesTheSameProjectAsATableOfTheSameReadings() throws IOException {
        Shell.Result list = rework(LIST, "list");

        Shell.Result page = rework(saved(poles(), PlanDigest.sha256(built)), "page");

        assertThat(page.code()).as(page.all()).isEqualTo(list.code());
        assertThat(page.out()).contains("12 of 28 loads have measured currents");
        assertThat(scratch.resolve("page/project-as-measured.json"))
                .hasSameTextualContentAs(scratch.resolve("list/project-as-measured.json"));
        assertThat(page.err()).doesNotContain("made of");
    }

    @Test
    void saysWhereItsPageWasMadeOfAnotherPlan() throws IOException {
        Shell.Result result = rework(saved(poles(), "0".repeat(64)), "page");

        assertThat(result.err()).contains("its page was made of a plan that places or sets something else");
        assertThat(result.out()).contains("12 of 28 loads have measured currents");
    }

    /** A row of a list and an entry of a page say the same of odd readings, each from where it stands. */
    @Test
    void warnsOfOddReadingsAsOfThoseInATable() throws IOException {
        List<SavedPole> odd = List.of(pole("sub-1,C,60,1,"), pole("mixer,B,0.5,0.4,"));
        Path table = Files.writeString(
                scratch.resolve("odd.csv"), "load,phase,running_a,idle_a\nsub-1,C,60,1\nmixer,B,0.5,0.4\n");

        String list = flowing(rework(table, "list"));
        String page = flowing(rework(saved(odd, PlanDigest.sha256(built)), "page"));

        for (String warning : List.of(
                "load 'sub-1' reads 60.0 A, far from its other readings",
                "load 'sub-1' reads 60.0 A on a breaker of 20.0 A",
                "1 load reads less than 90 % of what the project states, the first 'mixer'")) {
            assertThat(list).contains(warning);
            assertThat(page).contains(warning);
        }
        assertThat(list).contains("line 2: load 'sub-1'");
        assertThat(page).contains("yard.readings.json sheet 'poles' line 1: load 'sub-1'");
    }

    @Test
    void saysNothingOfReadingsThatAreNotOdd() throws IOException {
        String page = flowing(rework(saved(List.of(pole("sub-1,C,12,1.1,")), PlanDigest.sha256(built)), "page"));

        assertThat(page).doesNotContain("far from its other readings").doesNotContain("on a breaker of");
    }

    private static String flowing(Shell.Result result) {
        return result.all().replaceAll("\\s+", " ");
    }

    @Test
    void refusesALoadThatIsNotThereAndWritesNothing() throws IOException {
        Shell.Result result = rework(saved(List.of(pole("nobody,A,3,1,")), PlanDigest.sha256(built)), "page");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("nobody");
        assertThat(scratch.resolve("page")).doesNotExist();
    }

    @Test
    void refusesAnIdleCurrentAboveThatInUse() throws IOException {
        Shell.Result result = rework(saved(List.of(pole("sub-1,C,3,9,")), PlanDigest.sha256(built)), "page");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("sub-1");
    }
}
