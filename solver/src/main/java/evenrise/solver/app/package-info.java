/**
 * The jobs, each a request that becomes a result: the door for programs and for the command line.
 *
 * <p>Since 0.1.0. Public here is the door: requests, results, {@link evenrise.solver.app.Effort}, {@link
 * evenrise.solver.app.JobListener} and what they name; they show records of the model, of this package and of the Java
 * library, no others. Everything else, here and in every other package of the solver, is internal and may change with any
 * version; so are the model's packages but for project, plan, event, estimate, scatter, answer, sizing, evaluation and file.
 *
 * <p>May touch model.answer, model.check, model.contract, model.estimate, model.evaluation, model.event, model.file, model.handout, model.intake, model.measured, model.observation, model.plan, model.portfolio, model.project, model.readings, model.review, model.rules, model.scatter, model.sizing, solver.bounds, solver.commissioning, solver.compare, solver.document, solver.engine, solver.engine.nearby, solver.engine.search, solver.exchange, solver.grid, solver.intake, solver.portfolio, solver.recording, solver.rendering, solver.report, solver.rework, solver.sample, solver.table, solver.tidy.
 */
package evenrise.solver.app;
