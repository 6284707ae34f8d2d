package evenrise.solver.engine.nearby;

import evenrise.model.plan.Plan;

/**
 * A plan near the one as built.
 *
 * @param moves breakers and control leads that are elsewhere
 * @param hardCharge how much hard rules are broken; 0 where none is
 * @param objective in ampere-equivalents
 * @param plan without figures, phases and times, which follow from it
 */
public record NearbyPlan(int moves, long hardCharge, double objective, Plan plan) {}
