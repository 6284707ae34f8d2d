/**
 * What recorded currents say of a start: steps in them, matched to what a plan lets come on. Pure statistics over plain
 * arrays and records; nothing here reads a file.
 *
 * <p>May touch model.electrical, model.plan, model.project, model.rules.
 */
package evenrise.model.observation;
