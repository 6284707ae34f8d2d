package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.localsearch.LocalSearchType;
import org.optaplanner.core.config.solver.termination.TerminationConfig;
import org.optaplanner.core.impl.solver.DefaultSolver;

/**
 * A peer for the benchmark: OptaPlanner as it comes, late acceptance with its own moves (one value changed, two entities'
 * values exchanged), on the score. It starts where the engine starts and shares its score calculation.
 */
public final class StockLateAcceptance {
    private final CompiledProject compiled;
    private final long seed;
    private long moves;

    public StockLateAcceptance(Project project, long seed) {
        this.compiled = new CompiledProject(project);
        this.seed = seed;
    }

    public long moves() {
        return moves;
    }

    /** The best plan after {@code seconds} of wall time. */
    public Plan run(double seconds) {
        var config = Search.config(
                        new TerminationConfig().withMillisecondsSpentLimit(Math.max(1, (long) (1000 * seconds))), seed)
                .withPhases(new LocalSearchPhaseConfig().withLocalSearchType(LocalSearchType.LATE_ACCEPTANCE));
        DefaultSolver<WorkingPlan> solver = (DefaultSolver<WorkingPlan>)
                SolverFactory.<WorkingPlan>create(config).buildSolver();
        WorkingPlan found =
                solver.solve(WorkingPlan.of(compiled, FirstPlan.build(compiled).snapshot()));
        moves = solver.getSolverScope().getScoreCalculationCount();
        return new PlanMapper(compiled).toPlan(found.snapshot());
    }
}
