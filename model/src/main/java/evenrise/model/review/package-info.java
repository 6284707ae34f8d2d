/**
 * Electrical checks beside the rules; remarks and figures, no hard rule.
 *
 * <p>May touch model.contract, model.electrical, model.electrical.breaker, model.electrical.conductor,
 * model.electrical.motor, model.electrical.source, model.plan, model.project, model.rules.
 */
package evenrise.model.review;
