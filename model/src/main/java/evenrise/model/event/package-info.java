/**
 * What happens to a plan over time: scripts, the control, traces; pure.
 *
 * <p>May touch model.contract, model.electrical, model.plan, model.project, model.rules, model.sequence.
 */
package evenrise.model.event;
