package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every scenario of datasets/ is planned, found to draw more, reworked, and its work replayed. */
class DatasetsReworkTest {
    private static final Path DATASETS = Path.of("..", "datasets");
    private static final int LARGE = 300;

    static List<Path> scenarios() throws IOException {
        try (Stream<Path> entries = Files.list(DATASETS)) {
            return entries.filter(folder -> Files.isRegularFile(folder.resolve("project.json")))
                    .sorted()
                    .toList();
        }
    }

    private static Project project(Path folder) {
        Reading<Project> read = ProjectFile.read(folder.resolve("project.json"));
        return read.value().orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void isReworkedWithoutABrokenStep(Path folder) {
        Project given = project(folder);
        boolean isLarge = given.loads().size() > LARGE;
        Plan built = Reworked.plan(given, isLarge ? 1_000 : 4_000);
        Project project = Reworked.raised(given, 5, 6, 0.3);

        Front front = Reworked.front(project, built, isLarge ? 1_000 : 5_000);

        int before = front.asBuilt().violations();
        for (FrontPoint point :
                List.of(front.cureOnly(), front.points().get(front.points().size() - 1))) {
            WorkOrder order = OrderOfWork.between(project, built, point.plan(), 4);
            assertThat(point.violations()).isLessThanOrEqualTo(before);
            assertThat(order.breaches()).isEmpty();
        }
    }

    @Test
    void lanternYardIsCuredByTwoMovesAndNoFewer() throws IOException {
        Path folder = DATASETS.resolve("lantern-yard");
        Project given = project(folder);
        Plan built =
                PlanFile.read(folder.resolve("built.plan.json"), given).value().orElseThrow();
        Measured measured = MeasuredCsv.read(Files.readString(folder.resolve("measured.csv")), given, built);

        Front front = Reworked.front(measured.in(given), built, 20_000);

        assertThat(measured.problems()).isEmpty();
        assertThat(front.asBuilt().violations()).isEqualTo(3);
        assertThat(front.cureOnly().violations()).isZero();
        assertThat(front.cureOnly().moves()).isEqualTo(2);
    }
}
