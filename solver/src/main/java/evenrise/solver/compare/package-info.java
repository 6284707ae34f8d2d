/**
 * Counts of boards and panels against each other: the least price, and price against peak against time.
 *
 * <p>May touch model.check, model.contract, model.estimate, model.file, model.plan, model.project, model.rules,
 * solver.engine, solver.engine.search.
 */
package evenrise.solver.compare;
