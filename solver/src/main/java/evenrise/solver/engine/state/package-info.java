/**
 * A project by index and a plan on it with every sum that the score needs, kept up to date change by change; knows no
 * search.
 *
 * <p>May touch model.electrical, model.plan, model.project, model.rules, solver.engine.
 */
package evenrise.solver.engine.state;
