package evenrise.solver.bounds;

import java.util.Arrays;
import java.util.List;

/**
 * Weak duality over time. At every instant the worst phase carries at least the mean of the phases, so the peak is at least
 * any weighted mean over instants of that mean; and in a weighted mean each load costs at least what it costs at its
 * cheapest instant. Any weights prove a bound; good ones are sought as in fictitious play: instants weigh the more the
 * fuller they are, loads go where that costs least, and the profile moves a part of the way there.
 */
final class SpreadPeak {
    private static final double FIRST_SHARPNESS = 30;
    private static final int LOOK_EVERY = 25;
    private static final double CLOSE = 1.0005;

    private final Subject subject;
    private final Decay decay;

    SpreadPeak(Subject subject) {
        this.subject = subject;
        this.decay = new Decay(subject);
    }

    /** Weights found so far, the profile that they come from, and how many rounds it took. */
    static final class State {
        private final double[] profile;
        private double[] weights;
        private int rounds;

        private State(int instants) {
            profile = new double[instants];
            weights = new double[instants];
            Arrays.fill(weights, 1.0 / instants);
        }

        State copy() {
            State copy = new State(profile.length);
            System.arraycopy(profile, 0, copy.profile, 0, profile.length);
            copy.weights = weights.clone();
            copy.rounds = rounds / 4;
            return copy;
        }
    }

    State start() {
        return new State(subject.grid.count());
    }

    /**
     * Improves the weights for these windows, until the profile shows that no weights can prove more than {@code enough}, or
     * hardly more than is proven. Time: rounds × (clusters + half-lives) × instants.
     */
    void improve(State state, Windows windows, int rounds, double enough) {
        List<Clusters.Cluster> clusters = Clusters.of(subject, windows);
        int n = subject.grid.count();
        double standing = subject.standingAmps / subject.phases;
        double best = value(clusters, state.weights, standing);
        double[] mean = new double[n];
        for (int round = 0; round < rounds; round++) {
            int k = state.rounds++;
            double[] weights = k == 0 ? state.weights : sharpened(state.profile, FIRST_SHARPNESS + 6 * Math.sqrt(k));
            double[] answer = new double[n];
            double value = answer(clusters, weights, answer, standing);
            if (value > best) {
                best = value;
                state.weights = weights;
            }
            if (round % LOOK_EVERY == LOOK_EVERY - 1) {
                double most = Arrays.stream(state.profile).max().orElse(0);
                if (most <= enough || most <= best * CLOSE) {
                    break;
                }
            }
            double step = 2.0 / (k + 2);
            for (int i = 0; i < n; i++) {
                state.profile[i] += step * (answer[i] - state.profile[i]);
                mean[i] += (weights[i] - mean[i]) * 2 / (round + 2);
            }
        }
        if (rounds > 0 && value(clusters, mean, standing) > best) {
            state.weights = mean;
        }
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

    double amps(State state, Windows windows) {
        return amps(state.weights, windows);
    }

    private double value(List<Clusters.Cluster> clusters, double[] weights, double standing) {
        return answer(clusters, weights, new double[weights.length], standing);
    }

    /** Puts every cluster where it costs least, adds up the profile that makes, and gives what the weights prove. */
    private double answer(List<Clusters.Cluster> clusters, double[] weights, double[] profile, double standing) {
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

    /** Weights that sum to 1 and favour the highest instants the more, the sharper. */
    private static double[] sharpened(double[] profile, double sharpness) {
        double most = Arrays.stream(profile).max().orElse(0);
        double[] weights = new double[profile.length];
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] = most > 0 ? Math.exp(sharpness * (profile[i] / most - 1)) : 1;
            sum += weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        return weights;
    }
}
