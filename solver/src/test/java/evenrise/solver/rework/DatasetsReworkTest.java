package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
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
                    // Others take long; PlantReworkTest draws small ones.
                    .filter(folder -> PlantPart.of(project(folder)).isEmpty())
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
    void lanternYardIsCuredByTwoBreakersAndTheLeadOfOneAndNoFewer() throws IOException {
        Path folder = DATASETS.resolve("lantern-yard");
        Project given = project(folder);
        Plan built =
                PlanFile.read(folder.resolve("built.plan.json"), given).value().orElseThrow();
        Measured measured = MeasuredCsv.read(Files.readString(folder.resolve("measured.csv")), given, built);

        Front front = Reworked.front(measured.in(given), built, 20_000);

        assertThat(measured.problems()).isEmpty();
        assertThat(front.asBuilt().violations()).isEqualTo(3);
        assertThat(front.cureOnly().violations()).isZero();
        assertThat(front.cureOnly().changes().breakers()).isEqualTo(2);
        assertThat(front.cureOnly().moves()).isEqualTo(3);
        assertThat(curesByOneBreaker(measured.in(given), built)).isZero();
    }

    /** Plans in which one breaker is elsewhere and whose ratings, slots and reach hold: leads and settings mend none of them. */
    private static long curesByOneBreaker(Project project, Plan built) {
        return built.assignments().stream()
                .flatMap(from -> project.panels().stream()
                        .flatMap(panel -> IntStream.rangeClosed(1, panel.slots())
                                .mapToObj(slot -> Assignment.builder()
                                        .load(from.load())
                                        .panel(panel.id())
                                        .slot(slot)
                                        .board(from.board())
                                        .output(from.output())
                                        .build())))
                .map(to -> {
                    Map<String, Assignment> seats = Changes.seats(built);
                    seats.put(to.load(), to);
                    Map<String, BoardSetting> settings = new LinkedHashMap<>();
                    built.boards().forEach(each -> settings.put(each.id(), each));
                    return PlanFinisher.timed(project, Passage.bare(seats, settings));
                })
                .filter(plan -> Referee.judge(project, plan).violations().stream()
                        .noneMatch(each -> Set.of("rating", "slot", "reach").contains(each.rule())))
                .count();
    }
}
