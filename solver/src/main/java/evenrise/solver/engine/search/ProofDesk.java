package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.Optional;

/** Passes bounds and plans between a source of bounds and the board on which searches report. */
final class ProofDesk implements BoundSource.Desk {
    private final PlanMapper mapper;
    private final Plant plant;
    private final ProgressBoard progress;

    ProofDesk(Plant plant, ProgressBoard progress) {
        this.plant = plant;
        this.mapper = new PlanMapper(plant);
        this.progress = progress;
    }

    @Override
    public void bound(double objectiveAmps) {
        progress.bound(objectiveAmps);
    }

    @Override
    public void plan(Plan plan) {
        Situation situation = mapper.toSituation(plan);
        WorkingPlan working = WorkingPlan.of(plant, situation.snapshot());
        working.setScore(PlanScoreCalculator.score(situation));
        progress.offer(working, working.score(), 0);
    }

    @Override
    public Optional<Plan> best() {
        return progress.best()
                .filter(plan -> plan.score() != null && plan.score().hardScore() == 0)
                .map(plan -> PlanFinisher.timed(plant.project, mapper.toPlan(plan.snapshot())));
    }
}
