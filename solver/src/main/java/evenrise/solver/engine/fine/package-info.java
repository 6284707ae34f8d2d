/**
 * Small changes by the thousand of plans of one supply and one command: slots inside a panel, outputs and settings of a board.
 *
 * <p>May touch model.project, solver.engine.state.
 */
package evenrise.solver.engine.fine;
