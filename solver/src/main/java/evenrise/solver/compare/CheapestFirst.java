package evenrise.solver.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;

/**
 * All ways to take things of some kinds so that every need is met, one by one in order of their price: a best-first search
 * over how many of each kind are taken, guided by what the unmet part of the needs costs at least. That is exact for one need
 * alone, rounded so that it never is too much, so no way is passed over and few are looked at in vain. Kinds whose price
 * depends on their number count at their least price until all of them are taken, and then at what they cost.
 */
final class CheapestFirst<K> {
    /** After so many steps the rest is not listed. */
    private static final int MOST_STEPS = 400_000;

    private static final int UNITS = 1200;
    private static final double SAME_PRICE = 1e-7;

    private final List<K> kinds;
    private final double[] prices;
    private final List<Need<K>> needs;
    private final int most;
    private final Surcharge<K> surcharge;
    private final double[][][] costs; // by need, kind from which on is taken, units missing
    private final double[] unit;
    private final PriorityQueue<Step> open;
    private BooleanSupplier isStopped = () -> false;
    private long made;
    private int steps;

    /** A way, the kinds in their order and each as often as it is taken. */
    record Way<K>(List<K> taken, double price) {}

    /** What things that are priced together cost above the sum of their prices, by how many they are; never below 0. */
    interface Surcharge<K> {
        /** The same for kinds that are priced together; these stand side by side in the list of kinds. */
        Object priced(K kind);

        double of(K kind, int count);

        static <K> Surcharge<K> none() {
            return new Surcharge<>() {
                @Override
                public Object priced(K kind) {
                    return kind;
                }

                @Override
                public double of(K kind, int count) {
                    return 0;
                }
            };
        }
    }

    private record Step(int kind, int[] counts, int taken, double[] sums, double price, double atLeast, long number) {}

    /**
     * @param price of one thing of a kind at least, above 0
     * @param least things taken
     * @param most things taken
     */
    CheapestFirst(
            List<K> kinds,
            ToDoubleFunction<K> price,
            Surcharge<K> surcharge,
            List<Need<K>> needs,
            int least,
            int most) {
        this.kinds = List.copyOf(kinds);
        this.surcharge = surcharge;
        this.prices = kinds.stream().mapToDouble(price).toArray();
        this.needs = new ArrayList<>(needs);
        this.needs.add(new Need<>(least, any -> 1, Optional.empty()));
        this.most = most;
        this.unit = new double[this.needs.size()];
        this.costs = new double[this.needs.size()][][];
        for (int n = 0; n < this.needs.size(); n++) {
            costs[n] = costs(n);
        }
        this.open = new PriorityQueue<>(Comparator.comparingDouble(Step::atLeast)
                .thenComparing(Step::kind, Comparator.reverseOrder())
                .thenComparing(Step::number));
        offer(0, new int[kinds.size()], 0, new double[this.needs.size()], 0);
    }

    /** @param stop asked at each step; what is not listed then is not */
    CheapestFirst<K> stoppedBy(BooleanSupplier stop) {
        isStopped = stop;
        return this;
    }

    /** The next way; empty where there is none, or none in reach. */
    Optional<Way<K>> next() {
        while (!open.isEmpty() && steps < MOST_STEPS && !isStopped.getAsBoolean()) {
            steps++;
            Step step = open.poll();
            if (step.kind() == kinds.size()) {
                return Optional.of(way(step));
            }
            if (step.taken() < most) {
                int[] counts = step.counts().clone();
                counts[step.kind()]++;
                double[] sums = step.sums().clone();
                for (int n = 0; n < sums.length; n++) {
                    sums[n] += needs.get(n).of().applyAsDouble(kinds.get(step.kind()));
                }
                offer(step.kind(), counts, step.taken() + 1, sums, step.price() + prices[step.kind()]);
            }
            offer(step.kind() + 1, step.counts(), step.taken(), step.sums(), step.price() + finished(step));
        }
        return Optional.empty();
    }

    /** What is added as a step leaves its kind, where that is the last of those that are priced together. */
    private double finished(Step step) {
        K kind = kinds.get(step.kind());
        Object priced = surcharge.priced(kind);
        if (step.kind() + 1 < kinds.size()
                && surcharge.priced(kinds.get(step.kind() + 1)).equals(priced)) {
            return 0;
        }
        int count = 0;
        for (int at = step.kind(); at >= 0 && surcharge.priced(kinds.get(at)).equals(priced); at--) {
            count += step.counts()[at];
        }
        return surcharge.of(kind, count);
    }

    /** Whether ways may be left that were not listed, for there are too many. */
    boolean isCut() {
        return !open.isEmpty() && (steps >= MOST_STEPS || isStopped.getAsBoolean());
    }

    /** What every way that is not listed yet costs at least. */
    double restCostsAtLeast() {
        return open.isEmpty() ? Double.POSITIVE_INFINITY : open.peek().atLeast();
    }

    private void offer(int kind, int[] counts, int taken, double[] sums, double price) {
        double more = 0;
        Map<String, Double> apart = new HashMap<>();
        for (int n = 0; n < sums.length; n++) {
            double cost = costs[n][kind][missingUnits(n, sums[n])];
            more = Math.max(more, cost);
            Optional<String> others = needs.get(n).apart();
            if (others.isPresent()) {
                more = Math.max(more, apart.merge(others.get(), cost, Double::sum));
            }
        }
        double atLeast = price + more;
        if (atLeast < Double.POSITIVE_INFINITY) {
            double rounded = Math.rint(atLeast / SAME_PRICE) * SAME_PRICE;
            open.add(new Step(kind, counts, taken, sums, price, rounded, made++));
        }
    }

    /** Rounded up: things add whole units, rounded up, too. */
    private int missingUnits(int n, double sum) {
        return needs.get(n).isMet(sum)
                ? 0
                : (int) Math.ceil((needs.get(n).amount() - sum - Need.FORGIVEN) / unit[n] - 1e-9);
    }

    /** What so many missing units of a need cost at least, of kinds from one on. */
    private double[][] costs(int n) {
        Need<K> need = needs.get(n);
        boolean isWhole = need.amount() <= UNITS
                && need.amount() == Math.rint(need.amount())
                && kinds.stream()
                        .allMatch(kind -> need.of().applyAsDouble(kind)
                                == Math.rint(need.of().applyAsDouble(kind)));
        unit[n] = isWhole ? 1 : Math.max(need.amount(), Need.FORGIVEN) / UNITS;
        int units = (int) Math.max(0, Math.ceil(need.amount() / unit[n])) + 1;
        double[][] costs = new double[kinds.size() + 1][units + 1];
        for (int left = 1; left <= units; left++) {
            costs[kinds.size()][left] = Double.POSITIVE_INFINITY;
        }
        for (int kind = kinds.size() - 1; kind >= 0; kind--) {
            int adds = (int) Math.ceil(need.of().applyAsDouble(kinds.get(kind)) / unit[n] - 1e-9);
            for (int left = 1; left <= units; left++) {
                double without = costs[kind + 1][left];
                costs[kind][left] =
                        adds == 0 ? without : Math.min(without, prices[kind] + costs[kind][Math.max(0, left - adds)]);
            }
        }
        return costs;
    }

    private Way<K> way(Step step) {
        List<K> taken = new ArrayList<>();
        for (int kind = 0; kind < kinds.size(); kind++) {
            for (int i = 0; i < step.counts()[kind]; i++) {
                taken.add(kinds.get(kind));
            }
        }
        return new Way<>(List.copyOf(taken), step.price());
    }
}
