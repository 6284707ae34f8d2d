package evenrise.solver.bounds;

import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;

/**
 * The least that the peaks of a plant's sources and its duration can cost together. Plans are split by the instant at which
 * the longest sequence ends; each part has a bound of its own, and the least of them bounds all plans.
 */
final class PlantMinimum {
    private static final int FIRST_ROUNDS = 300;
    private static final int ROUNDS = 100;

    private final PlantLoads plant;
    private final PlantWindows.Order order;
    private final SpreadSources spread;
    private final BooleanSupplier stop;
    private final int splits;

    private record Part(int endFrom, int endTo, PlantWindows windows, PlantWeights weights, double atLeast) {}

    /** @param stop whether to leave it at what is proven so far */
    PlantMinimum(PlantLoads plant, int splits, BooleanSupplier stop) {
        this.plant = plant;
        this.order = new PlantWindows.Order(plant);
        this.spread = new SpreadSources(plant, stop);
        this.splits = splits;
        this.stop = stop;
    }

    /**
     * What is proven.
     *
     * @param objective least of peaks and duration by their weights
     * @param sourcesAmps what the peaks of all sources together stay below in no plan
     * @param supplyAmps what the supply's stays below in no plan
     */
    record Found(double objective, double sourcesAmps, double supplyAmps) {}

    /** @param leastAmps what the peaks of all sources together are known not to stay below */
    Found of(double ampsWeight, double secondsWeight, double leastAmps) {
        int end = plant.grid.count() - 1;
        PlantWindows all = order.until(end);
        if (!all.possible || !plant.allFit() || plant.closed.isEmpty() || stop.getAsBoolean()) {
            return new Found(ampsWeight * leastAmps, leastAmps, 0);
        }
        PlantWeights weights = spread.better(PlantWeights.begin(plant, all, end), all, FIRST_ROUNDS);
        double sources = Math.max(leastAmps, spread.amps(weights, all, -1));
        double supply = spread.amps(weights, all, 0);
        Part whole = new Part(0, end, all, weights, ampsWeight * sources);
        return new Found(least(whole, ampsWeight, secondsWeight, leastAmps), sources, supply);
    }

    private double least(Part whole, double ampsWeight, double secondsWeight, double leastAmps) {
        PriorityQueue<Part> parts =
                new PriorityQueue<>(Comparator.comparingDouble(Part::atLeast).thenComparingInt(Part::endFrom));
        parts.add(whole);
        int left = secondsWeight > 0 ? splits : 0;
        while (!parts.isEmpty()) {
            Part least = parts.peek();
            if (left-- <= 0 || stop.getAsBoolean() || least.endFrom() == least.endTo()) {
                return least.atLeast();
            }
            parts.remove();
            int middle = (least.endFrom() + least.endTo()) / 2;
            add(parts, least, least.endFrom(), middle, ampsWeight, secondsWeight, leastAmps);
            add(parts, least, middle + 1, least.endTo(), ampsWeight, secondsWeight, leastAmps);
        }
        return whole.atLeast(); // no plan can keep the order, and what holds of all is said
    }

    private void add(
            PriorityQueue<Part> parts,
            Part of,
            int from,
            int to,
            double ampsWeight,
            double secondsWeight,
            double leastAmps) {
        PlantWindows windows = order.until(to);
        if (windows.possible) {
            PlantWeights weights = to < of.endTo() ? spread.better(of.weights(), windows, ROUNDS) : of.weights();
            double amps = Math.max(leastAmps, spread.amps(weights, windows, -1));
            double seconds = plant.grid.earliestSeconds(from);
            double atLeast = Math.max(of.atLeast(), ampsWeight * amps + secondsWeight * seconds);
            parts.add(new Part(from, to, windows, weights, atLeast));
        }
    }
}
