package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.engine.search.Plans;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every scenario of datasets/ either breaks nothing that is judged or says on its page how a plan of it ends. */
class DemosTest {
    private static final Path DATASETS = Path.of("..", "datasets");
    /** Wrong on purpose; not planned. */
    private static final String MALFORMED = "broken";

    private static final long MOVES = 20_000;
    private static final Map<String, Long> MORE_MOVES = Map.of("lumen-theatre", 200_000L, "orchard-campus", 60_000L);
    private static final Pattern SAID = Pattern.compile("exit code (\\d+)");

    static List<String> scenarios() throws IOException {
        try (Stream<Path> entries = Files.list(DATASETS)) {
            return entries.filter(Files::isDirectory)
                    .map(folder -> folder.getFileName().toString())
                    .filter(name -> !name.equals(MALFORMED))
                    .sorted()
                    .toList();
        }
    }

    private static Evaluation planned(String scenario) {
        Project project = ProjectFile.read(DATASETS.resolve(scenario).resolve("project.json"))
                .value()
                .orElseThrow();
        Budget moves = new Budget.Moves(MORE_MOVES.getOrDefault(scenario, MOVES));
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), moves, 1, 1);
        Plan found = new Planner(request, progress -> {}).plan().plan();
        Layout layout = Layout.of(project, Plans.judged(project, found));
        return Evaluation.of(layout, () -> ProvenBounds.of(project));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void breaksNothingOrSaysSoOnItsPage(String scenario) throws IOException {
        Evaluation evaluation = planned(scenario);

        int code = ExitCode.of(evaluation.assessment(), false);
        List<Integer> said = SAID.matcher(
                        Files.readString(DATASETS.resolve(scenario).resolve("README.md")))
                .results()
                .map((MatchResult each) -> Integer.valueOf(each.group(1)))
                .distinct()
                .toList();
        assertThat(said)
                .as(evaluation.assessment().headline())
                .isEqualTo(code == ExitCode.DONE ? List.of() : List.of(code));
    }

    /** The plant of most walk-throughs keeps what nobody asks it to keep, too. */
    @Test
    void noEventOfTheHallPassesALimitAndEveryInrushIsStated() {
        Evaluation evaluation = planned("meridian-hall");

        assertThat(evaluation.eventsOverLimit()).isEmpty();
        assertThat(evaluation.assessment().isBroken()).isFalse();
        assertThat(evaluation.project().loads())
                .allSatisfy(load -> assertThat(load.inrushPeakAmps()).isPresent());
    }
}
