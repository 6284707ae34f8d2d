/**
 * Anneals plans, several side by side, and passes on the best. The only package that knows OptaPlanner.
 *
 * <p>May touch model.plan, model.project, model.rules, solver.engine, solver.engine.fine, solver.engine.move, solver.engine.start,
 * solver.engine.state.
 */
package evenrise.solver.engine.search;
