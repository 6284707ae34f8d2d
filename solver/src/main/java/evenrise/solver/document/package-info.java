/**
 * What each document of a plan shows, before anything is drawn: tables, panel schedules, facts.
 *
 * <p>May touch model.contract, model.electrical, model.estimate, model.evaluation, model.handout,
 * model.measured, model.plan, model.project, model.rules, model.scatter, model.sequence, solver.report.
 */
package evenrise.solver.document;
