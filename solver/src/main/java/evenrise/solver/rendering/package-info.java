/**
 * Renders documents: a page for a browser, printed sheets, a workbook. The only package that knows how each is written.
 *
 * <p>May touch model.contract, model.file, model.plan, solver.document, solver.drawing, solver.portfolio, solver.report, solver.table.
 */
package evenrise.solver.rendering;
