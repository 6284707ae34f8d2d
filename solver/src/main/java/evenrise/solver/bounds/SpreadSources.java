package evenrise.solver.bounds;

import evenrise.solver.bounds.PlantLoads.Closed;
import evenrise.solver.bounds.PlantLoads.Part;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Weak duality over time, for the sources of a plant: what {@link SpreadPeak} is for one supply. The peak of a source is at
 * least any weighted mean, over instants of the systems that start and over what is in use, of the mean of its phases; and
 * in the sum of these, over sources, each output costs at least what it costs below its cheapest source at its cheapest
 * instant. docs/bounds.md has the argument.
 */
final class SpreadSources {
    /** As for one supply. */
    private static final double FIRST_STEP = 0.12;

    private static final double LAST_OF_FIRST = 0.02;
    private static final int LOOK_EVERY = 10;
    private static final double CLOSE = 1.0005;

    /** Sums of doubles, of which weights are shares, may lose this of one. */
    static final double ROUNDING = 1e-9;

    private final PlantLoads plant;
    private final Decay decay;
    private final int count;

    private final BooleanSupplier stop;

    /** @param stop whether to leave it at the weights found so far */
    SpreadSources(PlantLoads plant, BooleanSupplier stop) {
        this.plant = plant;
        this.stop = stop;
        this.count = plant.grid.count();
        this.decay = new Decay(plant.grid, plant.project.timingToleranceSeconds(), plant.halfLifeSeconds);
    }

    /** What loads cost by some weights: at each source and command, by instant. */
    final class Costs {
        private final double[][][] suffix;
        private final double[][][][] weighed;
        private final double[][] rest;

        Costs(PlantWeights weights) {
            int sources = plant.sources.length;
            int clocks = plant.clocks.size();
            suffix = new double[sources][clocks][];
            weighed = new double[sources][clocks][plant.halfLifeSeconds.length][];
            rest = new double[sources][clocks];
            for (int source = 0; source < sources; source++) {
                for (int clock = 0; clock < clocks; clock++) {
                    double[] own = weights.ofInstants(source, clock);
                    suffix[source][clock] = Decay.suffix(own);
                    rest[source][clock] = Math.max(0, 1 - suffix[source][clock][0]);
                    for (int half = 0; half < plant.halfLifeSeconds.length; half++) {
                        weighed[source][clock][half] = decay.weighed(own, suffix[source][clock], half);
                    }
                }
            }
        }

        /** Of all of a part that comes on at an instant. */
        double amps(Part part, int source, int clock, int instant) {
            return part.baseAmps() * suffix[source][clock][instant]
                    + part.excessAmps() * weighed[source][clock][part.halfLife()][instant]
                    + part.useAmps() * rest[source][clock];
        }

        /** The least of a part, whenever in its window it comes on. */
        double least(Part part, int source, int clock, int first, int last) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = first; i <= last; i++) {
                least = Math.min(least, amps(part, source, clock, i));
            }
            return least;
        }

        private double least(Closed closed, int source, int first, int last) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = first; i <= last; i++) {
                double sum = 0;
                for (Part part : closed.parts()) {
                    sum += part.least()[source] * amps(part, source, closed.clock(), i);
                }
                least = Math.min(least, sum);
            }
            return least;
        }
    }

    Costs costs(PlantWeights weights) {
        return new Costs(weights);
    }

    /**
     * What the weights prove of the peaks of all sources together, or, where one is named, of that one alone.
     *
     * @param only place of a source; −1 for all
     */
    double amps(PlantWeights weights, PlantWindows windows, int only) {
        Costs costs = new Costs(weights);
        double sum = 0;
        for (int at = 0; at < plant.closed.size(); at++) {
            Closed closed = plant.closed.get(at);
            double least = Double.POSITIVE_INFINITY;
            for (int source = 0; source < plant.sources.length; source++) {
                if (closed.mayBeBelow(source)) {
                    boolean counts = only < 0 || only == source;
                    least = Math.min(
                            least, counts ? costs.least(closed, source, windows.first[at], windows.last[at]) : 0);
                }
            }
            sum += least;
        }
        for (Part part : plant.standing) {
            double least = Double.POSITIVE_INFINITY;
            for (int source = 0; source < plant.sources.length; source++) {
                boolean counts = only < 0 || only == source;
                if (part.least()[source] < PlantLoads.NEVER) {
                    least = Math.min(least, counts ? part.least()[source] * (part.baseAmps() + part.useAmps()) : 0);
                }
            }
            sum += least;
        }
        return sum * (1 - ROUNDING);
    }

    // ---- the search for weights

    /**
     * Weights for plans within windows, better than or as good as those to begin with.
     *
     * <p>Time: rounds × (clusters + sources × commands × half-lives) × instants.
     */
    PlantWeights better(PlantWeights begin, PlantWindows windows, int rounds) {
        List<PlantCluster> clusters = PlantCluster.of(plant, windows);
        double[] logs = Arrays.stream(begin.values).map(Math::log).toArray();
        double[] mean = new double[logs.length];
        double[] possible = new double[logs.length + 1];
        double[] weights = begin.values;
        double[] found = weights;
        double best = 0;
        for (int round = 0; round < rounds && !stop.getAsBoolean(); round++) {
            double[] profile = new double[logs.length + 1];
            double value = answer(clusters, begin.with(weights.clone()), profile);
            if (value > best) {
                best = value;
                found = weights.clone();
            }
            for (int i = 0; i <= logs.length; i++) {
                possible[i] += (profile[i] - possible[i]) * 3 / (round + 3);
            }
            for (int i = 0; i < logs.length; i++) {
                mean[i] += (weights[i] - mean[i]) * 3 / (round + 3);
            }
            double step = FIRST_STEP * Math.pow(LAST_OF_FIRST, (double) round / rounds);
            weights = step(logs, weights, profile, step, begin.shareLength());
            if (round % LOOK_EVERY == LOOK_EVERY - 1 && most(possible, begin.shareLength()) <= best * CLOSE) {
                break;
            }
        }
        boolean isMean = answer(clusters, begin.with(mean.clone()), new double[logs.length + 1]) > best;
        return begin.with(isMean ? mean : found);
    }

    /** Instants that are fuller than the mean of their share weigh more. */
    private static double[] step(double[] logs, double[] weights, double[] profile, double step, int length) {
        double[] next = new double[logs.length];
        for (int from = 0; from < logs.length; from += length) {
            double mean = 0;
            double most = 1e-9;
            for (int i = from; i < from + length; i++) {
                mean += weights[i] * profile[i];
                most = Math.max(most, Math.abs(profile[i]));
            }
            double largest = Double.NEGATIVE_INFINITY;
            for (int i = from; i < from + length; i++) {
                logs[i] += step * (profile[i] - mean) / most;
                largest = Math.max(largest, logs[i]);
            }
            double sum = 0;
            for (int i = from; i < from + length; i++) {
                next[i] = Math.exp(logs[i] - largest);
                sum += next[i];
            }
            for (int i = from; i < from + length; i++) {
                next[i] /= sum;
            }
        }
        return next;
    }

    /** What loads that may be cut in pieces can keep to: no weights prove more. */
    private static double most(double[] possible, int length) {
        double sum = possible[possible.length - 1];
        for (int from = 0; from < possible.length - 1; from += length) {
            double most = Double.NEGATIVE_INFINITY;
            for (int i = from; i < from + length; i++) {
                most = Math.max(most, possible[i]);
            }
            sum += most;
        }
        return sum;
    }

    /**
     * Puts every cluster where it costs least and gives what the weights prove.
     *
     * @param profile becomes what the blocks then carry, over what is in use, and last what is in use at all sources
     */
    private double answer(List<PlantCluster> clusters, PlantWeights weights, double[] profile) {
        Costs costs = new Costs(weights);
        int blocks = plant.sources.length * plant.clocks.size();
        double[][] bases = new double[blocks][count];
        double[][][] excess = new double[blocks][plant.halfLifeSeconds.length][];
        double[] used = new double[blocks];
        double sum = 0;
        for (PlantCluster cluster : clusters) {
            PlantCluster.Place place = cluster.cheapest(costs);
            sum += place.amps();
            int block = place.source() * plant.clocks.size() + cluster.clock();
            if (cluster.isSwitched()) {
                cluster.land(place, bases[block], excess[block], count);
                used[block] += cluster.useAmps(place.source());
            } else {
                profile[profile.length - 1] += place.amps();
            }
        }
        for (int block = 0; block < blocks; block++) {
            fill(profile, block * (count + 1), bases[block], excess[block], used[block]);
            profile[profile.length - 1] += used[block];
        }
        return sum;
    }

    private void fill(double[] profile, int from, double[] bases, double[][] excess, double used) {
        double[] sums = new double[count];
        for (int half = 0; half < excess.length; half++) {
            if (excess[half] != null) {
                decay.spread(excess[half], half, sums);
            }
        }
        double on = 0;
        for (int i = 0; i < count; i++) {
            on += bases[i];
            profile[from + i] = on + sums[i] - used;
        }
    }
}
