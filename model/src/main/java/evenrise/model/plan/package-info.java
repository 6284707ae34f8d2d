/**
 * Records of the plan file: settings, assignments and the figures that follow from them.
 *
 * <p>May touch model.contract, model.project.
 */
package evenrise.model.plan;
