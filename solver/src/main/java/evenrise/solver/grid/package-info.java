/**
 * Runs jobs that are bytes in and bytes out, on whatever computes them, and lands each answer once. Knows nothing of plans.
 *
 * <p>May touch model.file.
 */
package evenrise.solver.grid;
