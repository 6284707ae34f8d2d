/**
 * Hard rules, figures and the objective: the referee of every plan, from the project and the plan alone.
 *
 * <p>May touch model.contract, model.electrical, model.plan, model.project, model.sequence.
 */
package evenrise.model.rules;
