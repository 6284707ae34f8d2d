package evenrise.model.scatter;

import java.util.List;

/**
 * How the peak and the deepest dip of the supply or of one panel scatter.
 *
 * @param peakAmps instantaneous, in rising order
 * @param greatestAmps of all trials
 * @param boundAmps the plan's upper bound, times the highest voltage that is drawn
 * @param dipPercent of the nominal voltage, in rising order; empty where the source is not stated
 */
public record NodeScatter(
        String node,
        List<Percentile> peakAmps,
        double greatestAmps,
        double boundAmps,
        List<Percentile> dipPercent,
        double deepestPercent) {
    public NodeScatter {
        peakAmps = List.copyOf(peakAmps);
        dipPercent = List.copyOf(dipPercent);
    }
}
