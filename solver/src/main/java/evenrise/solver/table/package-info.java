/**
 * Tables of values as people and other programs make them: read whatever their separator, characters and decimal mark,
 * and written. The only package that reads workbooks.
 *
 * <p>May touch model.plan.
 */
package evenrise.solver.table;
