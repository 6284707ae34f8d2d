package evenrise.solver.rework;

import evenrise.model.plan.Assignment;

/**
 * The breaker and the lead of gear that is gone, or that another takes the place of: they are taken out for good.
 *
 * @param from where they are as built
 */
public record Removal(String load, Assignment from) {}
