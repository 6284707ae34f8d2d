/**
 * Records of the mapping file: which header of an equipment list means what.
 *
 * <p>May touch model.contract, model.project.
 */
package evenrise.model.intake;
