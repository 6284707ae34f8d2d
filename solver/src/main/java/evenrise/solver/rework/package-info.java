/** Reworks a plan as built: what to change, in which order, and proof that nothing is broken on the way. */
package evenrise.solver.rework;
