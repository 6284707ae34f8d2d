package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import java.util.concurrent.Callable;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.localsearch.LocalSearchType;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;
import org.optaplanner.core.impl.solver.DefaultSolver;

/**
 * A peer for the benchmark: what the library offers ready-made, late acceptance on the score with its own moves and its own
 * constants, over the same entities and the same score as the engine, from the engine's first plan.
 */
public final class StockLateAcceptance implements Callable<Plan> {
    private final CompiledProject compiled;
    private final DefaultSolver<WorkingPlan> solver;

    public StockLateAcceptance(Project project, long seed) {
        compiled = new CompiledProject(project);
        SolverConfig config = Search.config(new TerminationConfig().withDaysSpentLimit(1L), seed)
                .withPhases(new LocalSearchPhaseConfig()
                        .withLocalSearchType(LocalSearchType.LATE_ACCEPTANCE)
                        .withMoveSelectorConfig(StockMoves.config()));
        solver = (DefaultSolver<WorkingPlan>)
                SolverFactory.<WorkingPlan>create(config).buildSolver();
    }

    /** The best plan once it was stopped. */
    @Override
    public Plan call() {
        WorkingPlan first = WorkingPlan.of(compiled, FirstPlan.build(compiled).snapshot());
        return new PlanMapper(compiled).toPlan(solver.solve(first).snapshot());
    }

    public void stop() {
        solver.terminateEarly();
    }

    public long moves() {
        return solver.getSolverScope().getScoreCalculationCount();
    }
}
