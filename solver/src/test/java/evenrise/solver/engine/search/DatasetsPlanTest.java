package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.file.ProjectFile;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import evenrise.model.project.Project;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import java.nio.file.Path;
import java.util.List;
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
    @CsvSource({
        "meridian-hall, 60000",
        "willow-chapel, 30000",
        "lumen-theatre, 600000",
        "orchard-campus, 60000",
        "fennel-studio, 30000",
        "tin-shed, 30000",
        "quay-works, 30000"
    })
    void aScenarioThatCanBeKeptIsKept(String folder, long moves) {
        Project project = project(folder);

        Plan plan = plan(project, moves);

        assertThat(Referee.judge(project, plan).violations()).isEmpty();
        assertThat(plan.metrics().orElseThrow().objective())
                .isGreaterThanOrEqualTo(plan.bounds().orElseThrow().objective());
    }

    /** The troubled plants keep every hard rule, and the review finds what their pages say. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "tin-shed|breaker-rating,breaker-trip,conductor,voltage-dip|"
                        + "amplifier-demand,breaker-rating,breaker-trip,motor-start,voltage-drop",
                "quay-works|breaker-rating,breaker-trip,conductor,fault-level|"
                        + "amplifier-demand,motor-start,voltage-drop"
            })
    void aTroubledProjectIsToldSo(String folder, String breaking, String exceeding) {
        Project project = project(folder);

        Review review = ElectricalReview.of(Layout.of(project, plan(project, 20_000)));

        assertThat(checks(review, Grade.BREAKS)).contains(breaking.split(","));
        assertThat(checks(review, Grade.EXCEEDS_RECOMMENDATION)).contains(exceeding.split(","));
    }

    private static List<String> checks(Review review, Grade grade) {
        return review.remarks().stream()
                .filter(remark -> remark.grade() == grade)
                .map(Remark::check)
                .distinct()
                .toList();
    }

    /** A sound hall has notes, but breaks nothing that the review knows of. */
    @Test
    void theReviewOfTheHallBreaksNothing() {
        Project project = project("meridian-hall");

        assertThat(checks(ElectricalReview.of(Layout.of(project, plan(project, 60_000))), Grade.BREAKS))
                .isEmpty();
    }

    /** The arena takes more moves than a test should; what it gets here must still be told truly. */
    @Test
    void theSearchAndTheRefereeAgreeOnTheArena() {
        Project project = project("harbour-arena");

        Plan plan = plan(project, 5_000);

        Verdict verdict = Referee.judge(project, plan);
        PlanSums sums = new PlanMapper(new CompiledProject(project)).toSums(plan);
        assertThat(plan.assignments()).hasSameSizeAs(project.loads());
        assertThat(sums.hardCharge() == 0).isEqualTo(verdict.violations().isEmpty());
        assertThat(sums.objectiveMilliAmps() / 1000.0)
                .isCloseTo(verdict.metrics().objective(), within(0.1));
    }

    /** Its supply is too small for any layout: the rating cannot be kept, and everything else is. */
    @Test
    void theOverloadedClubBreaksNothingButItsRating() {
        Project project = project("overloaded-club");

        Plan plan = plan(project, 60_000);

        assertThat(Referee.judge(project, plan).violations())
                .isNotEmpty()
                .extracting(BrokenRule::rule)
                .containsOnly("rating");
    }
}
