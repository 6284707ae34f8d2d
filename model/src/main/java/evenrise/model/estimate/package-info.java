/**
 * Bills of materials.
 *
 * <p>May touch model.contract, model.project.
 */
package evenrise.model.estimate;
