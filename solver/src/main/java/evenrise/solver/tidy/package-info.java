/**
 * Puts a finished plan in order for people without changing what it costs or keeps: names that rise, free slots that lie
 * together. Pure, plan to plan.
 *
 * <p>May touch model.plan, model.project, model.review, model.rules.
 */
package evenrise.solver.tidy;
