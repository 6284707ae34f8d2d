/**
 * What is wrong with a project, or impossible, before it is planned.
 *
 * <p>May touch model.contract, model.electrical, model.electrical.conductor, model.event, model.intake, model.plan, model.portfolio, model.project.
 */
package evenrise.model.check;
