/**
 * Pure figures of motors: full-load current, branch and feeder sizes.
 *
 * <p>May touch model.electrical.breaker, model.project.
 */
package evenrise.model.electrical.motor;
