/**
 * Records of the portfolio file: which projects are planned together, in which variants, by which seeds.
 *
 * <p>May touch model.contract.
 */
package evenrise.model.portfolio;
