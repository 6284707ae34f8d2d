package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import java.util.Optional;

/** Passes bounds and plans between a source of bounds and the board on which searches report. */
final class SharedIncumbent implements BoundSource.Incumbent {
    private final PlanMapper mapper;
    private final CompiledProject compiled;
    private final SearchProgress progress;

    SharedIncumbent(CompiledProject compiled, SearchProgress progress) {
        this.compiled = compiled;
        this.mapper = new PlanMapper(compiled);
        this.progress = progress;
    }

    @Override
    public void bound(double objectiveAmps) {
        progress.bound(objectiveAmps);
    }

    @Override
    public void plan(Plan plan) {
        PlanSums sums = mapper.toSums(plan);
        WorkingPlan working = WorkingPlan.of(compiled, sums.snapshot());
        working.setScore(PlanScoreCalculator.score(sums));
        progress.offer(working, working.score(), 0);
    }

    @Override
    public Optional<Plan> best() {
        return progress.best()
                .filter(plan -> plan.score() != null && plan.score().hardScore() == 0)
                .map(plan -> PlanFinisher.timed(compiled.project, mapper.toPlan(plan.snapshot())));
    }
}
