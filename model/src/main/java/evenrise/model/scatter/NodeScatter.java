package evenrise.model.scatter;

import java.util.List;

/**
 * How the peak and the deepest dip of the supply or of one panel scatter.
 *
 * @param peakAmps instantaneous, in rising order
 * @param greatestAmps of all trials
 * @param rangeAmps the plan's peak over the voltages that the supply has and that are drawn: no trial exceeds it
 * @param rangeBound whether that is an upper bound of the plant's peak, too: every load states what it rests on
 * @param dipPercent of the nominal voltage, in rising order; empty where the source is not stated
 */
public record NodeScatter(
        String node,
        List<Percentile> peakAmps,
        double greatestAmps,
        double rangeAmps,
        boolean rangeBound,
        List<Percentile> dipPercent,
        double deepestPercent) {
    public NodeScatter {
        peakAmps = List.copyOf(peakAmps);
        dipPercent = List.copyOf(dipPercent);
    }
}
