/**
 * Searches around a plan as built for better ones that few changes reach.
 *
 * <p>May touch model.plan, model.project, solver.engine, solver.engine.move, solver.engine.search,
 * solver.engine.state.
 */
package evenrise.solver.engine.nearby;
