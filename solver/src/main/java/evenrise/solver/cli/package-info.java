/**
 * The command line: parse, call one job, print, map to an exit code. Only this package prints.
 *
 * <p>May touch model.answer, model.contract, model.evaluation, model.file, model.intake, model.measured, model.plan, model.project, solver.app, solver.desk, solver.report.
 */
package evenrise.solver.cli;
