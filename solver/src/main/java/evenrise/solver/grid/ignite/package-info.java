/**
 * Carries jobs between processes by Apache Ignite. The only package that knows it; packed apart, and found as a service where it is there.
 *
 * <p>May touch solver.grid.
 */
package evenrise.solver.grid.ignite;
