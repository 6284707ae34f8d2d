/**
 * One plan judged once: layout, verdict, review, events, bounds and the assessment of all.
 *
 * <p>May touch model.contract, model.plan, model.project, model.review, model.rules.
 */
package evenrise.model.evaluation;
