/**
 * Proofs for small projects: the whole contract as an integer program. The only package that knows OR-Tools; packed
 * apart, and found as a service where it is there.
 *
 * <p>May touch model.electrical, model.plan, model.project, model.rules, solver.bounds, solver.engine, solver.exhaustive.
 */
package evenrise.solver.exact;
