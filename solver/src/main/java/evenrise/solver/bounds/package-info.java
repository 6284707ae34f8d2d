/**
 * Proven lower bounds: what no plan of a project can stay below if it keeps every hard rule. Each class holds one
 * argument; docs/bounds.md has the proofs. Knows the model and nothing of the search.
 *
 * <p>May touch model.electrical, model.plan, model.project, model.rules.
 */
package evenrise.solver.bounds;
