/**
 * Records of the mapping files: which header of an equipment list, or of a recording, means what.
 *
 * <p>May touch model.contract, model.project.
 */
package evenrise.model.intake;
