/**
 * Renders documents: a page for a browser, printed sheets, a workbook. The only package that knows how each is written.
 *
 * <p>May touch model.contract, model.file, model.handout, model.observation, model.plan, model.project, solver.document, solver.drawing, solver.portfolio, solver.report, solver.table.
 */
package evenrise.solver.rendering;
