/**
 * Builds text and JSON from a plan and what the rules say of it. Pure: nothing here prints, reads or writes.
 *
 * <p>May touch model.answer, model.contract, model.estimate, model.evaluation, model.event, model.file, model.measured, model.observation, model.plan, model.project, model.review, model.rules, model.scatter, model.sizing, solver.compare, solver.engine, solver.intake, solver.portfolio, solver.rework.
 */
package evenrise.solver.report;
