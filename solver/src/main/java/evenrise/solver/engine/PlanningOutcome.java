package evenrise.solver.engine;

import evenrise.model.plan.Plan;
import java.util.OptionalDouble;

/**
 * What a search found.
 *
 * @param plan the best plan: settings and assignments, without figures, which only the referee gives
 * @param moves tried by all searches together
 * @param seconds wall time used
 * @param firstFeasibleSeconds when the first plan without a broken hard rule was there; empty where there was none
 */
public record PlanningOutcome(Plan plan, long moves, double seconds, OptionalDouble firstFeasibleSeconds) {}
