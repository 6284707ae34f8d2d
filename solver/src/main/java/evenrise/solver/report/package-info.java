/** Builds text and JSON from a plan and what the rules say of it. Pure: nothing here prints, reads or writes. */
package evenrise.solver.report;
