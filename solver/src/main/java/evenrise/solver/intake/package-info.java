/** The way in from a spreadsheet: reads equipment lists, bundles pieces onto breakers, sketches what feeds them. */
package evenrise.solver.intake;
