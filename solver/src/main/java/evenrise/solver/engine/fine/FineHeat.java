package evenrise.solver.engine.fine;

/**
 * What an annealing goes by at one moment.
 *
 * @param temperature in ampere-equivalents
 * @param doublings binary logarithm of the norm's order
 * @param hasteAmps what a second of waiting for the early roles costs
 * @param leanAmps what it costs that small inrush comes before great
 * @param wishAmps what it costs that a load is not on the phases where it had best sit
 */
public record FineHeat(double temperature, int doublings, double hasteAmps, double leanAmps, double wishAmps) {}
