/**
 * Answers about a plan that is there: what each other place of a load would break or cost.
 *
 * <p>May touch model.plan, model.project, model.rules, model.sequence.
 */
package evenrise.model.answer;
