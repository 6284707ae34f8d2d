/**
 * Pure times: when each step of each board comes on.
 *
 * <p>May touch model.plan, model.project.
 */
package evenrise.model.sequence;
