/**
 * What was measured on site beside what was planned: differences with their likely causes, limits at measured values, and a
 * project that holds what was measured. Pure; nothing here reads a file.
 *
 * <p>May touch model.contract, model.electrical, model.observation, model.plan, model.project, model.rules.
 */
package evenrise.model.measured;
