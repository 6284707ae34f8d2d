/** Proofs for small projects: the whole contract as an integer program; the only package that knows OR-Tools. */
package evenrise.solver.exact;
