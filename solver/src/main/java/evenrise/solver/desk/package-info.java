/**
 * The desk: a project and its plan worked on by hand in a browser of this machine, over a server that nobody else reaches.
 * The only package that serves. What is computed here is computed by the rooms below; what is kept are the contract's files.
 *
 * <p>May touch model.answer, model.contract, model.evaluation, model.event, model.file, model.handout, model.intake, model.measured, model.observation, model.plan,
 * model.project, model.review, model.rules, model.scatter, solver.app, solver.document, solver.exchange,
 * solver.rendering, solver.report.
 */
package evenrise.solver.desk;
