package evenrise.solver.tidy;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.FreeSlots;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Plans of the demonstrations, before and after. */
class DatasetsTidyTest {
    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "copper-mill",
                "fennel-studio",
                "juniper-hall",
                "lantern-yard",
                "lumen-theatre",
                "meridian-hall",
                "overloaded-club",
                "quay-works",
                "tin-shed",
                "willow-chapel"
            })
    void equalLoadsRiseAlongTheSlotsAndNothingElseChanges(String folder) {
        Project project = ProjectFile.read(Path.of("..", "datasets", folder, "project.json"))
                .value()
                .orElseThrow();
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(300), 1, 1);
        Plan before = PlanFinisher.timed(
                project, new Planner(request, any -> {}).plan().plan());

        Plan tidy = Tidying.of(project, before, Optional.empty(), false);

        TidyingTest.assertSameVerdict(
                Referee.judge(project, before), Referee.judge(project, PlanFinisher.timed(project, tidy)));
        assertThat(NeighbouringPairs.of(project, tidy).backAlongSlots()).isZero();
        assertThat(room(project, tidy)).isGreaterThanOrEqualTo(room(project, before));
    }

    /** Further breakers of three poles. */
    private static int room(Project project, Plan plan) {
        Layout layout = Layout.of(project, plan);
        return project.panels().stream()
                .mapToInt(panel -> FreeSlots.of(panel, layout).breakers(3))
                .sum();
    }
}
