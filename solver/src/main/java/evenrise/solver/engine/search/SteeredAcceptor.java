package evenrise.solver.engine.search;

import org.optaplanner.core.impl.localsearch.decider.acceptor.AbstractAcceptor;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchMoveScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchPhaseScope;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;
import org.optaplanner.core.impl.solver.termination.Termination;

/** Accepts what a {@link Steering} says, and knows how much of the budget is used. */
final class SteeredAcceptor extends AbstractAcceptor<WorkingPlan> {
    private static final double LAST_STAGE = 1;

    private final Steering steering;
    private final Termination<WorkingPlan> termination;
    private PlanScoreCalculator calculator;
    private LocalSearchPhaseScope<WorkingPlan> phase;

    SteeredAcceptor(Steering steering, Termination<WorkingPlan> termination) {
        this.steering = steering;
        this.termination = termination;
    }

    @Override
    public void phaseStarted(LocalSearchPhaseScope<WorkingPlan> scope) {
        phase = scope;
        calculator = (PlanScoreCalculator)
                ((IncrementalScoreDirector<WorkingPlan, ?>) scope.getScoreDirector()).getIncrementalScoreCalculator();
        calculator.enterStage(LAST_STAGE);
        calculator.lead(steering);
        calculator.calculateScore();
    }

    @Override
    public boolean isAccepted(LocalSearchMoveScope<WorkingPlan> scope) {
        return steering.stays(calculator.energy());
    }

    PlanScoreCalculator calculator() {
        return calculator;
    }

    /** Part of the budget that is used, from 0 to 1. */
    double used() {
        return termination.calculatePhaseTimeGradient(phase);
    }
}
