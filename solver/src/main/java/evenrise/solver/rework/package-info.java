/**
 * Reworks a plan as built: what to change, in which order, and proof that nothing is broken on the way.
 *
 * <p>May touch model.check, model.contract, model.electrical, model.evaluation, model.plan, model.project, model.rules,
 * model.sequence, solver.bounds, solver.engine.nearby, solver.table.
 */
package evenrise.solver.rework;
