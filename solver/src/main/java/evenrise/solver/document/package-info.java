/** Draws documents: a page for a browser, printed sheets, a workbook. The only package that knows how each is written. */
package evenrise.solver.document;
