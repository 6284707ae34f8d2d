package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.optaplanner.core.impl.localsearch.decider.acceptor.AbstractAcceptor;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchMoveScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchPhaseScope;
import org.optaplanner.core.impl.localsearch.scope.LocalSearchStepScope;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/**
 * Accepts every move that lowers the energy, and others the more rarely the more they raise it and the later it is.
 *
 * <p>While a rule is broken, the broken rules are annealed, too, again and again. A plan that keeps them all is not let go,
 * but in small projects: there, all but the first annealing may break a rule while they are hot, since the best plan is kept elsewhere and the
 * way to a better one may lead through a worse.
 */
final class Annealing extends AbstractAcceptor<WorkingPlan> {
    private static final double HOT_RULES = 8_000;
    private static final double COLD_RULES = 50;
    private static final double HOT_PART = 0.4;

    private final SplittableRandom random;
    private final Cooling cooling;
    private final Cycle cycle;
    private final Repair repair;
    private final boolean isSmall;
    private final List<Double> ends = new ArrayList<>();
    /** The best plan that an annealing of this try has ended in; null before one did without a broken rule. */
    private PlanSnapshot bestOfTry;

    private double leastOfTry = Double.POSITIVE_INFINITY;
    private PlanSnapshot best;
    /** The first plan met that breaks no rule. */
    private PlanSnapshot first;

    private double least = Double.POSITIVE_INFINITY;
    private PlanScoreCalculator calculator;
    private double energy;
    private long hardCharge;
    private double acceptedEnergy;
    private long acceptedHardCharge;
    private double acceptedObjective;
    private double temperature;
    private double ruleTemperature;

    /** @param isGentle whether the first annealing begins cool, so that what is good already is not lost */
    Annealing(CompiledProject compiled, boolean isGentle, long seed) {
        isSmall = compiled.isSmall();
        cooling = new Cooling(compiled);
        cycle = new Cycle(compiled, isGentle);
        repair = new Repair(compiled);
        random = new SplittableRandom(seed);
    }

    @Override
    public void phaseStarted(LocalSearchPhaseScope<WorkingPlan> scope) {
        calculator = (PlanScoreCalculator)
                ((IncrementalScoreDirector<WorkingPlan, ?>) scope.getScoreDirector()).getIncrementalScoreCalculator();
        calculator.calculateScore();
        energy = calculator.energy();
        hardCharge = calculator.hardCharge();
        acceptedEnergy = energy;
        acceptedHardCharge = hardCharge;
        acceptedObjective = calculator.sums().objective();
    }

    @Override
    public void stepStarted(LocalSearchStepScope<WorkingPlan> scope) {
        boolean wasGentle = cycle.isGentle();
        if (cycle.budgetUsed(scope.getTimeGradient())) {
            note(wasGentle);
            if (cycle.isAnew()) {
                bestOfTry = null;
                leastOfTry = Double.POSITIVE_INFINITY;
                calculator.askFor(first);
            }
            if (cycle.isGentle()) {
                calculator.askFor(cycle.isLast() ? best : bestOfTry);
            }
        }
        // in the cold the energy would stand in the way of what is being mended
        double heat = cycle.isGentle() || hardCharge > 0 ? 1 : cooling.part(cycle.budgetMoves());
        temperature =
                cycle.isGentle() ? cooling.gentle(cycle.progress()) : heat * cooling.temperature(cycle.progress());
        calculator.temperature(temperature, heat * cooling.temperature(0));
        if (calculator.enterStage(cycle.stage())) {
            calculator.calculateScore();
            energy = calculator.energy();
        }
        boolean lenient = isSmall && !cycle.isFirst() && cycle.progress() < HOT_PART;
        ruleTemperature = lenient ? HOT_RULES * Math.pow(COLD_RULES / HOT_RULES, cycle.progress() / HOT_PART) : 0;
    }

    @Override
    public boolean isAccepted(LocalSearchMoveScope<WorkingPlan> scope) {
        Rearrangement move = (Rearrangement) scope.getMove();
        cycle.work(move.work());
        boolean accept =
                move.isJudged() ? calculator.hardCharge() <= hardCharge : random.nextDouble() < Math.exp(-rise());
        if (accept) {
            acceptedEnergy = calculator.energy();
            acceptedHardCharge = calculator.hardCharge();
            acceptedObjective = calculator.sums().objective();
        }
        return accept;
    }

    /** How much worse the move leaves the plan, measured in temperatures. */
    private double rise() {
        double energyRise = (calculator.energy() - energy) / temperature;
        long chargeRise = calculator.hardCharge() - hardCharge;
        if (ruleTemperature > 0) {
            return energyRise + chargeRise / ruleTemperature;
        }
        if (hardCharge > 0) {
            repair.nextMove();
            return energyRise / repair.leniency() + chargeRise / repair.temperature();
        }
        return chargeRise > 0 ? Double.POSITIVE_INFINITY : energyRise;
    }

    /** What an annealing has come to; of one that ends with a broken rule, nothing. */
    private void note(boolean wasGentle) {
        PlanSums sums = calculator.sums();
        if (sums.hardCharge() == 0) {
            double objective = sums.objective();
            if (!wasGentle) {
                ends.add(objective);
            }
            if (objective < leastOfTry) {
                leastOfTry = objective;
                bestOfTry = sums.snapshot();
            }
            if (objective < least) {
                least = objective;
                best = bestOfTry;
            }
        }
    }

    /** The last move of all may be one that was not accepted: the library takes the best it has when the budget is used. */
    @Override
    public void phaseEnded(LocalSearchPhaseScope<WorkingPlan> scope) {
        if (cycle.isSpent() && !cycle.isGentle() && acceptedHardCharge == 0) {
            ends.add(acceptedObjective);
        }
    }

    /** Objectives in which annealings have ended, those that keep what was good not among them. */
    List<Double> ends() {
        return ends;
    }

    @Override
    public void stepEnded(LocalSearchStepScope<WorkingPlan> scope) {
        energy = acceptedEnergy;
        hardCharge = acceptedHardCharge;
        if (first == null && hardCharge == 0) {
            first = calculator.sums().snapshot();
        }
    }
}
