/**
 * Renders documents: a page for a browser, printed sheets, a workbook. The only package that knows how each is written.
 *
 * <p>May touch model.contract, model.file, solver.document, solver.report.
 */
package evenrise.solver.rendering;
