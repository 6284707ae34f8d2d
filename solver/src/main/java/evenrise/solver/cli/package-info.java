/**
 * The command line: parse, read, call one service, write, map to an exit code. Only this package prints.
 *
 * <p>May touch model.check, model.contract, model.estimate, model.evaluation, model.event, model.file, model.intake,
 * model.plan, model.project, model.review, model.rules, model.scatter, solver.bounds, solver.compare, solver.document,
 * solver.engine, solver.engine.nearby, solver.engine.search, solver.intake, solver.report,
 * solver.report.page, solver.rework, solver.sample.
 */
package evenrise.solver.cli;
