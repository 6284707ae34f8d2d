/**
 * Many plans as one piece of work: what is planned, the bytes that a job is made of, and what the plans come to together.
 *
 * <p>May touch model.plan.
 */
package evenrise.solver.portfolio;
