/**
 * Neighbourhoods: each draws one kind of change, aimed at the peak or at a broken rule.
 *
 * <p>May touch solver.engine.state.
 */
package evenrise.solver.engine.move;
