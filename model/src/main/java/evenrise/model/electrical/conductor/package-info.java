/**
 * Pure physics of conductors: ampacity, impedance, voltage drop.
 *
 * <p>May touch model.electrical, model.project.
 */
package evenrise.model.electrical.conductor;
