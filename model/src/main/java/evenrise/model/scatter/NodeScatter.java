package evenrise.model.scatter;

import java.util.List;

/**
 * How the peak of the supply or of one panel scatters.
 *
 * @param percentiles in rising order
 * @param greatestAmps of all trials
 * @param boundAmps the plan's upper bound, times the highest voltage that is drawn
 */
public record NodeScatter(String node, List<Percentile> percentiles, double greatestAmps, double boundAmps) {
    public NodeScatter {
        percentiles = List.copyOf(percentiles);
    }
}
