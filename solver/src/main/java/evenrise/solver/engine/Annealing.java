package evenrise.solver.engine;

import java.util.SplittableRandom;
import org.optaplanner.core.impl.localsearch.decider.acceptor.AbstractAcceptor;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchMoveScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchPhaseScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchStepScope;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/** Accepts every move that lowers the energy, and others the more rarely the more they raise it and the later it is. */
final class Annealing extends AbstractAcceptor<WorkingPlan> {
    private static final double START = Double.parseDouble(System.getProperty("t0", "0.5"));
    private static final double END = Double.parseDouble(System.getProperty("t1", "0.005"));

    private final SplittableRandom random;
    private PlanScoreCalculator calculator;
    private double current;
    private double accepted;
    private double temperature;

    Annealing(long seed) {
        random = new SplittableRandom(seed);
    }

    @Override
    public void phaseStarted(LocalSearchPhaseScope<WorkingPlan> scope) {
        calculator = (PlanScoreCalculator)
                ((IncrementalScoreDirector<WorkingPlan, ?>) scope.getScoreDirector()).getIncrementalScoreCalculator();
        calculator.calculateScore();
        current = calculator.energy();
        temperature = START;
    }

    @Override
    public void stepStarted(LocalSearchStepScope<WorkingPlan> scope) {
        temperature = START * Math.pow(END / START, scope.getTimeGradient());
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
