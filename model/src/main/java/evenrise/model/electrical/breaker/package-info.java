/**
 * Pure physics of protection: standard ratings, trip bands, disconnection, branch circuits.
 *
 * <p>May touch model.project.
 */
package evenrise.model.electrical.breaker;
