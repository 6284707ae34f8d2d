package evenrise.model.rules;

import evenrise.model.plan.Bounds;
import java.util.OptionalDouble;

/**
 * How near a plan is to what no plan can stay below. A plan that breaks a hard rule may lie below the bound, which holds
 * for plans that keep every rule; nothing is said of it.
 *
 * @param gapPercent how far the objective is above the bound, over the objective
 * @param isOptimal whether the objective is proven to be the least there is
 */
public record Proof(OptionalDouble gapPercent, boolean isOptimal) {
    /** An objective no further above its bound counts as the least there is, in ampere-equivalents. */
    public static final double PROVEN_AMPS = 0.001;

    public static Proof of(Verdict verdict, Bounds bounds) {
        return verdict.violations().isEmpty()
                ? ofWhole(verdict.metrics().objective(), bounds.objective())
                : new Proof(OptionalDouble.empty(), false);
    }

    /** Of a plan that keeps every rule. */
    public static Proof ofWhole(double objective, double bound) {
        double gapPercent = objective > 0 ? 100 * (objective - bound) / objective : 0;
        return new Proof(OptionalDouble.of(gapPercent), objective <= bound + PROVEN_AMPS);
    }
}
