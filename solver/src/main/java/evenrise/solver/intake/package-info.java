/**
 * The way in from a spreadsheet: reads equipment lists, bundles pieces onto breakers, sketches what feeds them.
 *
 * <p>May touch model.contract, model.check, model.electrical, model.electrical.breaker, model.electrical.motor, model.intake, model.plan,
 * model.project, solver.table.
 */
package evenrise.solver.intake;
