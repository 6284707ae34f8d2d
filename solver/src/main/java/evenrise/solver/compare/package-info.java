/** Counts of boards and panels against each other: the least price, and price against peak against time. */
package evenrise.solver.compare;
