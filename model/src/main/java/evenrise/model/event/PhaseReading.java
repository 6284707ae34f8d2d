package evenrise.model.event;

import evenrise.model.project.Phase;

/**
 * Instantaneous current of a node on a phase.
 *
 * @param node the panel's id, or the supply
 * @param drawnAmps by every load's envelope from the instant at which its breaker really closed
 * @param boundAmps the same with the project's timing tolerance: what it is at most at nominal voltage, whenever within it breakers close
 */
public record PhaseReading(double atSeconds, String node, Phase phase, double drawnAmps, double boundAmps) {}
