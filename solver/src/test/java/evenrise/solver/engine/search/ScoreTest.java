package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Plan;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.optaplanner.core.config.solver.SolverConfig;

/** The incremental score against a naive one, and both against the referee. */
class ScoreTest {
    private static final long MOVES = 400;

    /** The engine compares after every move and every undo, and fails on the first difference. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void isWhatANaiveEvaluatorSaysAfterEveryMove(long seed) {
        isWhatANaiveEvaluatorSays(ARandomProject.of(seed), seed);
    }

    /** Panels that lack a phase are judged by those that they have. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {61, 62, 63, 64, 65, 66})
    void isTheSameWherePanelsLackAPhase(long seed) {
        Project project = onTwoLegs(ARandomProject.of(seed), seed);

        isWhatANaiveEvaluatorSays(project, seed);
        agreesWithTheReferee(project, seed);
    }

    /** The first panel, and every other by chance, without the last phase of the system. */
    private static Project onTwoLegs(Project project, long seed) {
        Random random = new Random(seed);
        List<Phase> all = project.supply().system().phases();
        List<Phase> fewer = all.subList(0, Math.max(1, all.size() - 1));
        List<Panel> panels = new ArrayList<>();
        for (Panel panel : project.panels()) {
            boolean isWhole = !panels.isEmpty() && random.nextBoolean();
            panels.add(isWhole ? panel : panel.withPhaseRotation(fewer));
        }
        return project.withPanels(panels);
    }

    /** Moves, stages and repair of projects that have no moves to spare. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2})
    void isTheSameInLargerProjects(long seed) {
        Project project = Sample.venue(seed, new VenueSize(3, 60, PhaseSystem.THREE_PHASE))
                .project();

        assertThat(new CompiledProject(project).isSmall()).isFalse();
        isWhatANaiveEvaluatorSays(project, seed);
    }

    /** Limits that hold for what may happen, too: on small projects and on larger ones. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {31, 32, 33, 34, 35, 36, 37, 38, 39, 40})
    void isTheSameWhereLimitsHoldForEvents(long seed) {
        isWhatANaiveEvaluatorSays(Eventful.of(ARandomProject.of(seed), seed), seed);
    }

    @Test
    void isTheSameWhereLimitsHoldForEventsInLargerProjects() {
        Project project =
                Sample.venue(5, new VenueSize(3, 60, PhaseSystem.THREE_PHASE)).project();

        isWhatANaiveEvaluatorSays(Eventful.of(project, 5), 5);
    }

    private static void isWhatANaiveEvaluatorSays(Project project, long seed) {
        isWhatANaiveEvaluatorSays(project, Optional.empty(), seed, MOVES);
    }

    /** @param earlier a plan to start from, from which every move costs */
    static void isWhatANaiveEvaluatorSays(Project project, Optional<Plan> earlier, long seed, long moves) {
        CompiledProject compiled = new CompiledProject(project, false, earlier);
        PlanSums sums = earlier.map(new PlanMapper(compiled)::toSums).orElseGet(() -> FirstPlan.build(compiled));
        earlier.ifPresent(plan -> NaiveScoreCalculator.compare(compiled, plan));
        WorkingPlan start = WorkingPlan.of(compiled, sums.snapshot());
        SolverConfig config = AssertedSearch.asserting(moves, seed);

        WorkingPlan found =
                Search.build(config, new Annealing(compiled, false, seed)).solve(start);

        assertThat(found.score()).isEqualTo(new NaiveScoreCalculator().calculateScore(found));
    }

    /** Hard level zero and no violation are the same thing, and the objective is the referee's to the milliampere. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 22, 23, 24, 25, 26, 27, 28})
    void agreesWithTheReferee(long seed) {
        agreesWithTheReferee(ARandomProject.of(seed), seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51, 52})
    void agreesWithTheRefereeWhereLimitsHoldForEvents(long seed) {
        agreesWithTheReferee(Eventful.of(ARandomProject.of(seed), seed), seed);
    }

    private static void agreesWithTheReferee(Project project, long seed) {
        CompiledProject compiled = new CompiledProject(project);
        PlanMapper mapper = new PlanMapper(compiled);

        for (long moves : new long[] {1, 100, 2_000}) {
            PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), seed, 1);
            Plan plan = Plans.finished(
                    project, new Planner(request, progress -> {}).plan().plan());
            Verdict verdict = Referee.judge(project, plan);
            PlanSums sums = mapper.toSums(plan);

            assertThat(sums.hardCharge() == 0)
                    .as("hard charge %d, violations %s", sums.hardCharge(), verdict.violations())
                    .isEqualTo(verdict.violations().isEmpty());
            assertThat(sums.objectiveMilliAmps() / 1000.0)
                    .isCloseTo(verdict.metrics().objective(), within(0.002));
        }
    }
}
