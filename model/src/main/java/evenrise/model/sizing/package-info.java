/**
 * Proposes sizes: the least standard breaker, cable, feeder device, transformer and interrupting rating that the electrical checks have nothing to say against. Pure; what
 * it proposes is tried by those checks themselves, so that a proposal that is taken over passes them.
 *
 * <p>May touch model.contract, model.electrical.breaker, model.electrical.conductor, model.plan, model.project,
 * model.review, model.rules.
 */
package evenrise.model.sizing;
