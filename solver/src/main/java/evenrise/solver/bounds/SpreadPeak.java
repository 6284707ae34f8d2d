package evenrise.solver.bounds;

import java.util.Arrays;
import java.util.List;

/**
 * Weak duality over time. At every instant the worst phase carries at least the mean of the phases, so the peak is at least
 * any weighted mean over instants of that mean; and in a weighted mean each load costs at least what it costs at its
 * cheapest instant. Any weights prove a bound; good ones are sought by exponentiated gradients: loads go where they cost
 * least, and instants that are then fuller than the mean weigh more, with smaller and smaller steps.
 */
final class SpreadPeak {
    /** First step, in logarithms of weights a relative excess over the mean; found by trial, like the last one's part. */
    private static final double FIRST_STEP = 0.12;

    private static final double LAST_OF_FIRST = 0.02;
    private static final int LOOK_EVERY = 10;
    private static final double CLOSE = 1.0002;

    /** Where the search begins: so much on the end, so much on all instants, the rest from the first amplifier on. */
    private static final double ON_END = 0.2;

    private static final double ON_ALL = 0.1;

    private final BoundedProject subject;
    private final Decay decay;

    SpreadPeak(BoundedProject subject) {
        this.subject = subject;
        this.decay = new Decay(subject);
    }

    /**
     * Weights for plans in a box, not negative and with sum 1. The mean of the profiles is one that loads can have if they
     * may be cut in pieces: no weights prove more than its highest instant, so the search ends once that is {@code enough}
     * at most, or hardly more than what is proven.
     *
     * <p>Time: rounds × (clusters + half-lives) × instants.
     */
    double[] weights(Box box, Windows windows, int rounds, double enough) {
        List<Clusters.Cluster> clusters = Clusters.of(subject, windows);
        int n = subject.grid.count();
        double[] logs = begin(box, n);
        double[] mean = new double[n];
        double[] possible = new double[n];
        double[] found = normal(logs);
        double best = 0;
        for (int round = 0; round < rounds; round++) {
            double[] weights = normal(logs);
            double[] profile = new double[n];
            double value = answer(clusters, weights, profile);
            if (value > best) {
                best = value;
                found = weights;
            }
            double step = FIRST_STEP * Math.pow(LAST_OF_FIRST, (double) round / rounds) / Math.max(value, 1e-9);
            for (int i = 0; i < n; i++) {
                logs[i] += step * (profile[i] - value);
                mean[i] += (weights[i] - mean[i]) * 3 / (round + 3);
                possible[i] += (profile[i] - possible[i]) * 3 / (round + 3);
            }
            if (round % LOOK_EVERY == LOOK_EVERY - 1) {
                double most = Arrays.stream(possible).max().orElse(0);
                if (most <= enough || most <= best * CLOSE) {
                    break;
                }
            }
        }
        return answer(clusters, mean, new double[n]) > best ? mean : found;
    }

    /** What the weights prove: no plan within these windows has a lower peak. Time: loads × instants. */
    double amps(double[] weights, Windows windows) {
        double[] suffix = Decay.suffix(weights);
        double[][] weighed = weighed(weights, suffix);
        double sum = subject.standingAmps;
        for (int i = 0; i < windows.first.length; i++) {
            SwitchedLoad load = subject.loads.get(i);
            double least = Double.POSITIVE_INFINITY;
            double[] rest = weighed[load.halfLife()];
            for (int t = windows.first[i]; t <= windows.last[i]; t++) {
                least = Math.min(least, load.baseAmps() * suffix[t] + load.excessAmps() * rest[t]);
            }
            sum += load.poles() * least;
        }
        return sum / subject.phases / Math.max(1, suffix[0]);
    }

    private static double[] begin(Box box, int instants) {
        double[] logs = new double[instants];
        int from = Math.min(box.amplifierFrom(), box.endTo());
        double late = (1 - ON_END - ON_ALL) / (box.endTo() - from + 1);
        for (int i = 0; i < instants; i++) {
            double weight = ON_ALL / instants + (i >= from && i <= box.endTo() ? late : 0);
            logs[i] = Math.log(weight + (i == box.endTo() ? ON_END : 0));
        }
        return logs;
    }

    /** Puts every cluster where it costs least, adds up the profile that makes, and gives what the weights prove. */
    private double answer(List<Clusters.Cluster> clusters, double[] weights, double[] profile) {
        double standing = subject.standingAmps / subject.phases;
        double[] suffix = Decay.suffix(weights);
        double[][] weighed = weighed(weights, suffix);
        double[] bases = new double[profile.length];
        double[][] excess = new double[weighed.length][profile.length];
        double sum = standing;
        for (Clusters.Cluster cluster : clusters) {
            double least = Double.POSITIVE_INFINITY;
            int where = cluster.first;
            double[] rest = weighed[cluster.halfLife];
            for (int t = cluster.first; t <= cluster.last; t++) {
                double cost = cluster.baseAmps * suffix[t] + cluster.excessAmps * rest[t];
                if (cost < least) {
                    least = cost;
                    where = t;
                }
            }
            sum += least;
            bases[where] += cluster.baseAmps;
            excess[cluster.halfLife][where] += cluster.excessAmps;
        }
        double on = standing;
        for (int h = 0; h < excess.length; h++) {
            decay.spread(excess[h], h, profile);
        }
        for (int t = 0; t < profile.length; t++) {
            on += bases[t];
            profile[t] += on;
        }
        return sum;
    }

    private double[][] weighed(double[] weights, double[] suffix) {
        double[][] weighed = new double[subject.halfLifeSeconds.length][];
        for (int h = 0; h < weighed.length; h++) {
            weighed[h] = decay.weighed(weights, suffix, h);
        }
        return weighed;
    }

    private static double[] normal(double[] logs) {
        double most = Arrays.stream(logs).max().orElse(0);
        double[] weights = Arrays.stream(logs).map(log -> Math.exp(log - most)).toArray();
        double sum = Arrays.stream(weights).sum();
        return Arrays.stream(weights).map(weight -> weight / sum).toArray();
    }
}
