package evenrise.model.observation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Samples about a step as a smooth curve, a step, and a surge that decays. */
final class StepModel {
    /** Half-lives from so much of an interval on are tried, each twice the one before. */
    private static final double LEAST_OF_AN_INTERVAL = 0.25;

    private static final int REFINED = 5;

    private final double[] since;
    private final double[] values;
    private final double interval;
    private final List<double[]> surges = new ArrayList<>();

    /**
     * The sample itself is left out.
     *
     * @param without seconds after it that are left out, too
     */
    StepModel(double[] seconds, double[] amps, int at, int from, int to, double without) {
        int[] rows = IntStream.range(from, to)
                .filter(i -> i != at && (i < at || seconds[i] - seconds[at] > without))
                .toArray();
        since = Arrays.stream(rows).mapToDouble(i -> seconds[i] - seconds[at]).toArray();
        values = Arrays.stream(rows).mapToDouble(i -> amps[i]).toArray();
        interval = (seconds[to - 1] - seconds[from]) / (to - 1 - from);
        for (double half = LEAST_OF_AN_INTERVAL * interval; half <= since[since.length - 1]; half *= 2) {
            surges.add(surge(half));
        }
    }

    int samples() {
        return values.length;
    }

    double intervalSeconds() {
        return interval;
    }

    /** How long after the step is looked at. */
    double seenSeconds() {
        return since[since.length - 1];
    }

    private double[] surge(double half) {
        return Arrays.stream(since)
                .map(each -> each > 0 ? Math.pow(2, -each / half) : 0)
                .toArray();
    }

    /**
     * Columns are the powers of the curve, the step, the surge and what the surge changes by with its half-life.
     *
     * @param half 0 without a surge
     */
    LeastSquares fit(int degree, double half, boolean withDerivative) {
        double[][] columns = new double[degree + (half > 0 ? 3 : 2) + (withDerivative ? 1 : 0)][values.length];
        double span = since[since.length - 1] - since[0];
        for (int row = 0; row < values.length; row++) {
            double power = 1;
            for (int k = 0; k <= degree; k++) {
                columns[k][row] = power;
                power *= since[row] / span;
            }
            if (since[row] > 0) {
                columns[degree + 1][row] = 1;
                if (half > 0) {
                    double surge = Math.pow(2, -since[row] / half);
                    columns[degree + 2][row] = surge;
                    if (withDerivative) {
                        columns[degree + 3][row] = surge * Math.log(2) * since[row] / half;
                    }
                }
            }
        }
        return new LeastSquares(columns, values);
    }

    /**
     * Of the surge that fits best: of a grid, then by Gauss and Newton. 0 where none above the step fits better than none.
     *
     * @param plain the fit without a surge
     */
    double halfSeconds(int degree, LeastSquares plain) {
        double best = 0;
        double least = plain.squares();
        double half = LEAST_OF_AN_INTERVAL * interval;
        for (double[] surge : surges) {
            LeastSquares.OneMore more = plain.with(surge);
            if (more.part() > 0 && more.squares() < least) {
                least = more.squares();
                best = half;
            }
            half *= 2;
        }
        for (int i = 0; i < REFINED && best > 0; i++) {
            LeastSquares fit = fit(degree, best, true);
            if (!fit.isUnique()) {
                break;
            }
            double relative = fit.part(degree + 3) / fit.part(degree + 2);
            double next = best * Math.max(0.6, Math.min(1.6, 1 + relative));
            LeastSquares there = fit(degree, next, false);
            if (!there.isUnique() || there.part(degree + 2) <= 0 || there.squares() >= least) {
                break;
            }
            least = there.squares();
            best = next;
        }
        return best;
    }
}
