/**
 * What the engine is asked and what it answers: request, budget, progress, outcome, source of bounds. Nothing is
 * searched here.
 *
 * <p>May touch model.plan, model.project.
 */
package evenrise.solver.engine;
