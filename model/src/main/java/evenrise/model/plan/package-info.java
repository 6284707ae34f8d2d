/**
 * Records of the plan file: settings, assignments, the figures that follow from them and what was found.
 *
 * <p>May touch model.contract, model.project.
 */
package evenrise.model.plan;
