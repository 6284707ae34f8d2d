/**
 * The way in for recordings of loggers and power-quality recorders: tables of values, line by line.
 *
 * <p>May touch model.contract, model.intake, model.observation, model.project, solver.table.
 */
package evenrise.solver.recording;
