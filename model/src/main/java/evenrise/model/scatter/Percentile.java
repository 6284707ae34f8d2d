package evenrise.model.scatter;

/**
 * One percentile of a peak.
 *
 * @param percent such as 95: this part of the trials stayed at or below
 * @param amps instantaneous
 * @param leastAmps lower end of its confidence interval
 * @param mostAmps upper end
 */
public record Percentile(double percent, double amps, double leastAmps, double mostAmps) {}
