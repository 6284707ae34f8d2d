package evenrise.model.scatter;

import evenrise.model.project.Scatter;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PhasePeak;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Many switch-ons with their chances drawn. Each trial has a generator of its own from the seed and its number, so that a
 * result depends on neither threads nor order; memory does not grow with the number of trials.
 */
public final class Trials {
    /** What is reported, in percent. */
    private static final double[] PERCENTS = {50, 95, 99};

    /** A generator whose streams are unrelated even for neighbouring seeds. */
    private static final RandomGeneratorFactory<RandomGenerator> GENERATORS =
            RandomGeneratorFactory.of("L64X128MixRandom");

    private static final long BETWEEN_SEEDS = 0x9E3779B97F4A7C15L;

    private Trials() {}

    /**
     * The scatter of the supply's and each panel's peak when the sequence runs as planned.
     *
     * @param count of trials; at least 1
     * @param threads that share them; at least 1
     */
    public static List<NodeScatter> of(Layout layout, Scatter scatter, int count, long seed, int threads) {
        Plant plant = new Plant(layout, scatter.angleUpToHalfMillis());
        double[] bounds = bounds(layout, scatter);
        PeakTally[] sums = tallies(bounds);
        int lanes = Math.min(threads, count);
        onThreads(
                lanes,
                () -> IntStream.range(0, lanes).parallel().forEach(lane -> {
                    PeakTally[] own = lane(plant, scatter, bounds, count, seed, lane, lanes);
                    synchronized (sums) {
                        for (int node = 0; node < sums.length; node++) {
                            sums[node].add(own[node]);
                        }
                    }
                }));
        return results(plant, bounds, sums);
    }

    private static PeakTally[] lane(
            Plant plant, Scatter scatter, double[] bounds, int count, long seed, int lane, int lanes) {
        PeakTally[] tallies = tallies(bounds);
        Trial trial = new Trial(plant, scatter);
        for (int number = lane; number < count; number += lanes) {
            double[] peaks = trial.play(GENERATORS.create(seed * BETWEEN_SEEDS + number));
            for (int node = 0; node < peaks.length; node++) {
                tallies[node].add(peaks[node]);
            }
        }
        return tallies;
    }

    private static PeakTally[] tallies(double[] bounds) {
        return DoubleStream.of(bounds).mapToObj(PeakTally::new).toArray(PeakTally[]::new);
    }

    /** By node: the plan's upper bound, at the highest voltage that is drawn. */
    private static double[] bounds(Layout layout, Scatter scatter) {
        return layout.nodes().stream()
                .mapToDouble(node -> scatter.mostVoltageRatio()
                        * node.peaks().stream()
                                .mapToDouble(PhasePeak::amps)
                                .max()
                                .orElse(0))
                .toArray();
    }

    private static List<NodeScatter> results(Plant plant, double[] bounds, PeakTally[] sums) {
        return IntStream.range(0, sums.length)
                .mapToObj(node -> new NodeScatter(
                        plant.nodes.get(node),
                        sums[node].percentiles(PERCENTS),
                        sums[node].greatestAmps(),
                        bounds[node]))
                .toList();
    }

    private static void onThreads(int threads, Runnable work) {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            pool.submit(work).get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdown();
        }
    }
}
