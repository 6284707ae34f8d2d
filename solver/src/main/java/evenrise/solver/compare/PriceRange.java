package evenrise.solver.compare;

import evenrise.model.project.QuantityRange;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a price is where quantities are open.
 *
 * @param ranges the quantities that are open
 * @param likely price at the quantities that are likely; empty where there is no make-up, as everywhere here
 * @param draws in the order in which they were drawn
 * @param swings one quantity at a time, the others as they are likely; the widest first
 * @param wasStopped before all were drawn
 * @param isOfOwnMakeUp whether prices are those of the project's own panels and boards, where counting does not rule out that
 *     they hold what was drawn; else of the cheapest make-up, each time
 */
public record PriceRange(
        List<QuantityRange> ranges,
        OptionalDouble likely,
        List<Draw> draws,
        List<Swing> swings,
        boolean wasStopped,
        boolean isOfOwnMakeUp) {
    /** @param counts one for each of the ranges */
    public record Draw(List<Integer> counts, OptionalDouble price) {}

    /** @param why there is no make-up at one end; empty where there is one at both */
    public record Swing(QuantityRange range, OptionalDouble atLow, OptionalDouble atHigh, Optional<String> why) {
        /** Infinite where one end has no make-up. */
        public double width() {
            return atLow.isPresent() && atHigh.isPresent()
                    ? Math.abs(atHigh.getAsDouble() - atLow.getAsDouble())
                    : Double.POSITIVE_INFINITY;
        }
    }

    public PriceRange {
        ranges = List.copyOf(ranges);
        draws = List.copyOf(draws);
        swings = swings.stream()
                .sorted(Comparator.comparingDouble(Swing::width).reversed())
                .toList();
    }

    /** Draws that no make-up was found for. */
    public long without() {
        return draws.stream().filter(draw -> draw.price().isEmpty()).count();
    }

    /**
     * The least price that so many percent of the draws do not exceed; those without a make-up count as dearer than all.
     * Empty where that is one of them, or there are none.
     */
    public OptionalDouble percentile(int percent) {
        List<Double> sorted = draws.stream()
                .map(draw -> draw.price().orElse(Double.POSITIVE_INFINITY))
                .sorted()
                .toList();
        if (sorted.isEmpty()) {
            return OptionalDouble.empty();
        }
        int rank = (percent * sorted.size() + 99) / 100;
        double price = sorted.get(Math.max(1, rank) - 1);
        return Double.isInfinite(price) ? OptionalDouble.empty() : OptionalDouble.of(price);
    }
}
