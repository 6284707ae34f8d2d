/**
 * Pure physics of sources: impedance, fault current, dips while loads start.
 *
 * <p>May touch model.electrical, model.project.
 */
package evenrise.model.electrical.source;
