package evenrise.solver.engine;

import evenrise.model.plan.Plan;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a search found.
 *
 * @param plan the best plan: settings and assignments, without figures, which only the referee gives
 * @param moves tried by all searches together
 * @param seconds wall time used
 * @param firstFeasibleSeconds when the first plan without a broken hard rule was there; empty where there was none
 * @param provenObjective what a source of bounds has proven that no plan can stay below, in ampere-equivalents; 0 where
 *     it has proven nothing
 * @param ends objectives in which annealings have ended that kept every rule, of all searches, in their order
 */
public record PlanningOutcome(
        Plan plan,
        long moves,
        double seconds,
        OptionalDouble firstFeasibleSeconds,
        double provenObjective,
        List<Double> ends) {
    public PlanningOutcome {
        ends = List.copyOf(ends);
    }

    /** An outcome of which nothing is known of the way to it. */
    public PlanningOutcome(
            Plan plan, long moves, double seconds, OptionalDouble firstFeasibleSeconds, double provenObjective) {
        this(plan, moves, seconds, firstFeasibleSeconds, provenObjective, List.of());
    }

    /** An outcome of which nothing is proven. */
    public PlanningOutcome(Plan plan, long moves, double seconds, OptionalDouble firstFeasibleSeconds) {
        this(plan, moves, seconds, firstFeasibleSeconds, 0);
    }
}
