/**
 * Pure physics of currents, envelopes, phases and lines; a function is a quantity with its unit at the end.
 *
 * <p>May touch model.project.
 */
package evenrise.model.electrical;
