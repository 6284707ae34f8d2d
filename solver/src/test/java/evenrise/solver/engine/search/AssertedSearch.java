package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Project;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSnapshot;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.EnvironmentMode;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;

/** Searches in which a naive evaluator compares after every move and every undo, and fails on the first difference. */
public final class AssertedSearch {
    private AssertedSearch() {}

    /** Goes where the steering leads, for so many moves. */
    public static void run(Steering steering, CompiledProject compiled, PlanSnapshot start, long moves, long seed) {
        SolverConfig config = asserting(moves, seed);

        WorkingPlan found = Search.build(config, steering).solve(WorkingPlan.of(compiled, start));

        assertThat(found.score()).isEqualTo(new NaiveScoreCalculator().calculateScore(found));
    }

    /** A small plant with some further parts. */
    public static Project plant(long seed, int percent) {
        return Plantful.of(seed, Plantful.some(seed, percent));
    }

    static SolverConfig asserting(long moves, long seed) {
        SolverConfig config = Search.config(new TerminationConfig().withScoreCalculationCountLimit(moves), seed)
                .withEnvironmentMode(EnvironmentMode.FULL_ASSERT);
        config.getScoreDirectorFactoryConfig()
                .withAssertionScoreDirectorFactory(
                        new ScoreDirectorFactoryConfig().withEasyScoreCalculatorClass(NaiveScoreCalculator.class));
        return config;
    }
}
