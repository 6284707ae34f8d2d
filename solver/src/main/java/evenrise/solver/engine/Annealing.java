package evenrise.solver.engine;

import java.util.SplittableRandom;
import org.optaplanner.core.impl.localsearch.decider.acceptor.AbstractAcceptor;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchMoveScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchPhaseScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchStepScope;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/** Accepts every move that lowers the energy, and others the more rarely the more they raise it and the later it is. */
final class Annealing extends AbstractAcceptor<WorkingPlan> {
    private final SplittableRandom random;
    private final Cooling cooling;
    private PlanScoreCalculator calculator;
    private double current;
    private double accepted;
    private double temperature;

    Annealing(Plant plant, long seed) {
        cooling = new Cooling(plant);
        random = new SplittableRandom(seed);
    }

    @Override
    public void phaseStarted(LocalSearchPhaseScope<WorkingPlan> scope) {
        calculator = (PlanScoreCalculator)
                ((IncrementalScoreDirector<WorkingPlan, ?>) scope.getScoreDirector()).getIncrementalScoreCalculator();
        calculator.calculateScore();
        current = calculator.energy();
        temperature = cooling.temperature(0);
    }

    @Override
    public void stepStarted(LocalSearchStepScope<WorkingPlan> scope) {
        temperature = cooling.temperature(scope.getTimeGradient());
    }

    @Override
    public boolean isAccepted(LocalSearchMoveScope<WorkingPlan> scope) {
        double energy = calculator.energy();
        boolean accept = energy <= current || random.nextDouble() < Math.exp((current - energy) / temperature);
        if (accept) {
            accepted = energy;
        }
        return accept;
    }

    @Override
    public void stepEnded(LocalSearchStepScope<WorkingPlan> scope) {
        current = accepted;
    }
}
