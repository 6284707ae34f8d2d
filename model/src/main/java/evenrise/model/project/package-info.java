/**
 * Records of the project file: what is to be fed and what feeds it.
 *
 * <p>May touch model.contract.
 */
package evenrise.model.project;
