/**
 * A project as tables for people: written, one column a field, and taken back as changes, row by row.
 *
 * <p>May touch model.check, model.contract, model.file, model.plan, model.project, solver.table.
 */
package evenrise.solver.exchange;
