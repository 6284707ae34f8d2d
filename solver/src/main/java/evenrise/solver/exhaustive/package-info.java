/**
 * Proofs for small projects by looking at everything that could be better: who shares a phase with whom, which times boards
 * can have, and who comes on when. Plain trees; docs/bounds.md says why nothing is missed. Knows no solver and no search.
 *
 * <p>May touch model.plan, model.project, model.rules, solver.bounds, solver.engine.
 */
package evenrise.solver.exhaustive;
