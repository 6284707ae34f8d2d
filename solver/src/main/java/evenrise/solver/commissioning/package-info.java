/**
 * Filled commissioning sheets, as documents leave them blank: read as they are, whatever somebody did to them.
 *
 * <p>May touch model.check, model.contract, model.measured, model.plan, model.project, model.readings, model.rules, solver.rework, solver.table.
 */
package evenrise.solver.commissioning;
