/**
 * Bills of materials.
 *
 * <p>May touch model.project.
 */
package evenrise.model.estimate;
