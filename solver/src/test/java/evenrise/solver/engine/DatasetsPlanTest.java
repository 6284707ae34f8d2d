package evenrise.solver.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.model.rules.Violation;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every scenario of datasets/ is planned and judged. */
class DatasetsPlanTest {
    private static Project project(String folder) {
        return ProjectFile.read(Path.of("..", "datasets", folder, "project.json"))
                .value()
                .orElseThrow();
    }

    private static Plan plan(Project project, long moves) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), 1, 1);
        return Plans.finished(
                project, new Planner(request, progress -> {}).plan().plan());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"meridian-hall, 60000", "willow-chapel, 30000", "lumen-theatre, 600000"})
    void aScenarioThatCanBeKeptIsKept(String folder, long moves) {
        Project project = project(folder);

        Plan plan = plan(project, moves);

        assertThat(Referee.judge(project, plan).violations()).isEmpty();
        assertThat(plan.metrics().orElseThrow().objective())
                .isGreaterThanOrEqualTo(plan.bounds().orElseThrow().objective());
    }

    /** The arena takes more moves than a test should; what it gets here must still be told truly. */
    @Test
    void theSearchAndTheRefereeAgreeOnTheArena() {
        Project project = project("harbour-arena");

        Plan plan = plan(project, 5_000);

        Verdict verdict = Referee.judge(project, plan);
        Situation situation = new PlanMapper(new Plant(project)).toSituation(plan);
        assertThat(plan.assignments()).hasSameSizeAs(project.loads());
        assertThat(situation.hardCharge() == 0).isEqualTo(verdict.violations().isEmpty());
        assertThat(situation.objectiveMilliAmps() / 1000.0)
                .isCloseTo(verdict.metrics().objective(), within(0.1));
    }

    /** Its supply is too small for any layout: the rating cannot be kept, and everything else is. */
    @Test
    void theOverloadedClubBreaksNothingButItsRating() {
        Project project = project("overloaded-club");

        Plan plan = plan(project, 60_000);

        assertThat(Referee.judge(project, plan).violations())
                .isNotEmpty()
                .extracting(Violation::rule)
                .containsOnly("rating");
    }
}
