/**
 * Peaks over many trials with their chances drawn.
 *
 * <p>May touch model.electrical, model.electrical.breaker, model.electrical.source, model.plan, model.project,
 * model.rules.
 */
package evenrise.model.scatter;
