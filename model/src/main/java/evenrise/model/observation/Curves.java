package evenrise.model.observation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where a current may have jumped: it is cut into the pieces that smooth curves (up to the third degree) fit at the least
 * sum of squared residuals, with a price for each piece and degree. By optimal partitioning with pruning (Killick,
 * Fearnhead and Eckley, Optimal detection of changepoints with a linear computational cost, 2012). A surge that decays over
 * seconds is smooth, so that it hides no step.
 */
final class Curves {
    /** Price of a piece in variances times the logarithm of the samples (the usual one of Schwarz is 2, for level and place). */
    private static final double PRICE = 4;

    /** The same of a degree more. */
    private static final double PRICE_OF_A_DEGREE = 2;

    /** Longer pieces are cut, which costs a candidate that is looked at again, and bounds the work. */
    private static final int MOST_SAMPLES = 200;

    private static final int DEGREES = 4;

    private final double[] seconds;
    private final double[] amps;
    private final double secondsOfOne;

    /** A piece that begins at a sample, with the sums of powers and products of what it has so far. */
    private final class Piece {
        final int from;
        final double before;
        final double[] powers = new double[2 * DEGREES - 1];
        final double[] products = new double[DEGREES];
        double squares;

        Piece(int from, double before) {
            this.from = from;
            this.before = before;
        }

        void add(int sample) {
            double value = amps[sample] - amps[from];
            double time = (seconds[sample] - seconds[from]) / secondsOfOne;
            double power = 1;
            for (int k = 0; k < powers.length; k++) {
                powers[k] += power;
                if (k < DEGREES) {
                    products[k] += power * value;
                }
                power *= time;
            }
            squares += value * value;
        }

        /** Residuals in variances and prices of degrees, by Cholesky's factors of the normal equations. */
        double cost(double variance, double price) {
            double left = squares;
            double least = Double.POSITIVE_INFINITY;
            double[][] factor = new double[DEGREES][DEGREES];
            double[] turned = new double[DEGREES];
            for (int i = 0; i < DEGREES && i + (i == 0 ? 1 : 2) <= powers[0]; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = powers[i + j];
                    for (int k = 0; k < j; k++) {
                        sum -= factor[i][k] * factor[j][k];
                    }
                    factor[i][j] = i == j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / factor[j][j];
                }
                double product = products[i];
                for (int k = 0; k < i; k++) {
                    product -= factor[i][k] * turned[k];
                }
                turned[i] = product / factor[i][i];
                left -= turned[i] * turned[i];
                least = Math.min(least, Math.max(0, left) / variance + i * price);
            }
            return least;
        }
    }

    private Curves(double[] seconds, double[] amps) {
        this.seconds = seconds;
        this.amps = amps;
        int cap = Math.min(MOST_SAMPLES, seconds.length);
        this.secondsOfOne = (seconds[seconds.length - 1] - seconds[0]) / (seconds.length - 1) * cap / 3;
    }

    /**
     * First samples of all pieces but the first.
     *
     * @param sigmaAmps standard deviation of a sample
     */
    static List<Integer> joints(double[] seconds, double[] amps, double sigmaAmps) {
        return new Curves(seconds, amps).joints(sigmaAmps * sigmaAmps);
    }

    private List<Integer> joints(double variance) {
        int n = amps.length;
        double logarithm = Math.log(n);
        double price = PRICE * logarithm;
        double ofDegree = PRICE_OF_A_DEGREE * logarithm;
        int[] last = new int[n + 1];
        List<Piece> open = new ArrayList<>(List.of(new Piece(0, -price)));
        for (int to = 1; to <= n; to++) {
            double least = Double.POSITIVE_INFINITY;
            double[] costs = new double[open.size()];
            for (int i = 0; i < costs.length; i++) {
                Piece piece = open.get(i);
                piece.add(to - 1);
                costs[i] = piece.before + piece.cost(variance, ofDegree);
                if (costs[i] + price < least) {
                    least = costs[i] + price;
                    last[to] = piece.from;
                }
            }
            List<Piece> kept = new ArrayList<>();
            for (int i = 0; i < costs.length; i++) {
                // A piece cut in two pays for its degrees once more.
                if (costs[i] <= least + (DEGREES - 1) * ofDegree && to - open.get(i).from < MOST_SAMPLES) {
                    kept.add(open.get(i));
                }
            }
            if (to < n) {
                kept.add(new Piece(to, least));
            }
            open = kept;
        }
        int[] joints = new int[n];
        int count = 0;
        for (int to = last[n]; to > 0; to = last[to]) {
            joints[count++] = to;
        }
        int[] rising = Arrays.copyOf(joints, count);
        Arrays.sort(rising);
        return new ArrayList<>(Arrays.stream(rising).boxed().toList());
    }
}
