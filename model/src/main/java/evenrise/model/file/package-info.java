/**
 * Reads and writes files: JSON, YAML and their schema. The only package that knows Jackson.
 *
 * <p>May touch model.check, model.contract, model.event, model.intake, model.plan, model.portfolio, model.project, model.readings.
 */
package evenrise.model.file;
