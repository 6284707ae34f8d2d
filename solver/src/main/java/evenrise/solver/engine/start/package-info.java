/**
 * Builds a complete first plan in plain code: board choice, levelling, slots, outputs, pacing.
 *
 * <p>May touch model.project, solver.engine.state.
 */
package evenrise.solver.engine.start;
