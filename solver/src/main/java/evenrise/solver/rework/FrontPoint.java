package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.function.UnaryOperator;

/**
 * A plan that no plan with fewer moves equals, as far as was found.
 *
 * @param violations hard rules that it breaks, as the referee counts them
 * @param objective in ampere-equivalents, as the referee computes it
 * @param plan with phases and times; figures and the rest where it was finished
 */
public record FrontPoint(Changes changes, int violations, double objective, Plan plan) {
    public int moves() {
        return changes.moves();
    }

    FrontPoint finished(UnaryOperator<Plan> finish) {
        return new FrontPoint(changes, violations, objective, finish.apply(plan));
    }

    boolean betters(FrontPoint other) {
        return violations < other.violations
                || (violations == other.violations && objective < other.objective - Front.EQUAL_AMPS);
    }
}
