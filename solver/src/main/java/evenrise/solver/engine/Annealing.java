package evenrise.solver.engine;

import java.util.SplittableRandom;
import org.optaplanner.core.impl.localsearch.decider.acceptor.AbstractAcceptor;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchMoveScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchPhaseScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchStepScope;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/**
 * Accepts every move that lowers the energy, and others the more rarely the more they raise it and the later it is. Once
 * a plan keeps every hard rule, no move may break one; until then the broken rules are annealed, too, again and again.
 */
final class Annealing extends AbstractAcceptor<WorkingPlan> {
    private final SplittableRandom random;
    private final Cooling cooling;
    private final Repair repair;
    private PlanScoreCalculator calculator;
    private double energy;
    private long hardCharge;
    private double acceptedEnergy;
    private long acceptedHardCharge;
    private double temperature;

    Annealing(Plant plant, long seed) {
        cooling = new Cooling(plant);
        repair = new Repair(plant);
        random = new SplittableRandom(seed);
    }

    @Override
    public void phaseStarted(LocalSearchPhaseScope<WorkingPlan> scope) {
        calculator = (PlanScoreCalculator)
                ((IncrementalScoreDirector<WorkingPlan, ?>) scope.getScoreDirector()).getIncrementalScoreCalculator();
        calculator.calculateScore();
        energy = calculator.energy();
        hardCharge = calculator.hardCharge();
    }

    @Override
    public void stepStarted(LocalSearchStepScope<WorkingPlan> scope) {
        temperature = cooling.temperature(scope.getTimeGradient());
    }

    @Override
    public boolean isAccepted(LocalSearchMoveScope<WorkingPlan> scope) {
        double rise = (calculator.energy() - energy) / temperature;
        if (hardCharge > 0) {
            repair.nextMove();
            rise = rise / repair.leniency() + (calculator.hardCharge() - hardCharge) / repair.temperature();
        } else if (calculator.hardCharge() > 0) {
            return false;
        }
        boolean accept = rise <= 0 || random.nextDouble() < Math.exp(-rise);
        if (accept) {
            acceptedEnergy = calculator.energy();
            acceptedHardCharge = calculator.hardCharge();
        }
        return accept;
    }

    @Override
    public void stepEnded(LocalSearchStepScope<WorkingPlan> scope) {
        energy = acceptedEnergy;
        hardCharge = acceptedHardCharge;
    }
}
