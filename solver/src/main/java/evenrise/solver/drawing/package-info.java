/**
 * Lays drawings out on sheets: lines, circles and texts in millimetres, before anything is written. The only package that
 * knows the library for it.
 *
 * <p>May touch solver.document.
 */
package evenrise.solver.drawing;
