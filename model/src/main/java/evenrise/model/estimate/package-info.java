/**
 * Bills of materials, and the prices that are built up from them.
 *
 * <p>May touch model.contract, model.plan, model.project.
 */
package evenrise.model.estimate;
