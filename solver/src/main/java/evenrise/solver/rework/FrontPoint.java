package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.function.UnaryOperator;

/**
 * A plan that no plan with fewer moves equals, as far as was found.
 *
 * @param night what the changes cost at least
 * @param violations hard rules that it breaks, as the referee counts them
 * @param objective in ampere-equivalents, as the referee computes it
 * @param marginPercent least part of what a line may carry, of any node, that running currents leave; below 0 where one is over
 * @param plan with phases and times; figures and the rest where it was finished
 */
public record FrontPoint(
        Changes changes, NightCost night, int violations, double objective, double marginPercent, Plan plan) {
    public double minutes() {
        return night.minutes();
    }

    public int moves() {
        return changes.moves();
    }

    FrontPoint finished(UnaryOperator<Plan> finish) {
        return new FrontPoint(changes, night, violations, objective, marginPercent, finish.apply(plan));
    }

    boolean betters(FrontPoint other) {
        return violations < other.violations
                || (violations == other.violations && objective < other.objective - Front.EQUAL_AMPS);
    }
}
