package evenrise.model.observation;

import java.util.List;

/**
 * Samples of one phase as what flowed before and loads that come on, each with its surge that decays, at angles of their own:
 * a clamp reads the length of their sum. Fitted by Gauss and Newton; what is known of a load beforehand counts as a reading
 * more of each of its figures.
 */
final class PhasorFit {
    /**
     * Of surges that are not quite as they are modelled so much is left over (common practice, no source). What flows above
     * what flows later is surge, whatever it is of.
     */
    private static final double UNLIKE = 0.01;

    private static final int ROUNDS = 15;
    private static final int HOLDS = 6;
    private static final double LEAST_HOLD = 0.03;
    private static final double ENOUGH = 0.01;

    /** Figures of a load: current, surge, logarithm of its half-life, angle. */
    private static final int OF_A_LOAD = 4;

    private final double[] seconds;
    private final double[] amps;
    private final double[] sigmas;
    private final List<Part> parts;
    private double[] figures;
    private double cost;

    /**
     * A load, or one that is thought of.
     *
     * @param seconds when it comes on, by the logger's clock
     * @param amps that flow in the end
     * @param ampsSpread standard deviation of that
     * @param surgeAmps on top of that at the beginning
     * @param surgeSpread standard deviation of that
     * @param halfSeconds in which the surge halves
     * @param halfSpread standard deviation of its logarithm
     * @param radians by which its current leads what flowed before
     */
    record Part(
            double seconds,
            double amps,
            double ampsSpread,
            double surgeAmps,
            double surgeSpread,
            double halfSeconds,
            double halfSpread,
            double radians) {}

    /** How far angles may be off. */
    private static final double RADIANS_SPREAD = 0.25;

    /**
     * @param sigmaAmps of a sample
     * @param before what flowed before, to begin with
     */
    PhasorFit(double[] seconds, double[] amps, double sigmaAmps, double before, List<Part> parts) {
        this.seconds = seconds;
        this.amps = amps;
        this.parts = parts;
        this.sigmas = new double[amps.length];
        figures = new double[1 + OF_A_LOAD * parts.size()];
        figures[0] = before;
        for (int k = 0; k < parts.size(); k++) {
            figures[1 + OF_A_LOAD * k] = parts.get(k).amps();
            figures[2 + OF_A_LOAD * k] = parts.get(k).surgeAmps();
            figures[3 + OF_A_LOAD * k] = Math.log(parts.get(k).halfSeconds());
            figures[4 + OF_A_LOAD * k] = parts.get(k).radians();
        }
        double least = Double.POSITIVE_INFINITY;
        for (int i = amps.length - 1; i >= 0; i--) {
            least = Math.min(least, amps[i]);
            sigmas[i] = Math.hypot(sigmaAmps, UNLIKE * (amps[i] - least));
        }
        fit();
    }

    /** By Levenberg and Marquardt: where a whole step overshoots it is held back, each figure by what samples say of it. */
    private void fit() {
        cost = cost(figures);
        double hold = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double before = cost;
            for (int i = 0; i < HOLDS && cost == before; i++) {
                double[] there = step(hold);
                double now = cost(there);
                if (now < cost) {
                    cost = now;
                    figures = there;
                    hold = hold < LEAST_HOLD ? 0 : hold / 10;
                } else {
                    hold = Math.max(LEAST_HOLD, 10 * hold);
                }
            }
            if (before - cost < ENOUGH) {
                return;
            }
        }
    }

    private double model(double[] at, int sample) {
        double real = at[0];
        double imaginary = 0;
        for (int k = 0; k < parts.size(); k++) {
            double since = seconds[sample] - parts.get(k).seconds();
            if (since > 0) {
                int first = 1 + OF_A_LOAD * k;
                double current = at[first] + at[first + 1] * Math.pow(2, -since / Math.exp(at[first + 2]));
                real += current * Math.cos(at[first + 3]);
                imaginary += current * Math.sin(at[first + 3]);
            }
        }
        return Math.hypot(real, imaginary);
    }

    private double cost(double[] at) {
        double cost = 0;
        for (int i = 0; i < amps.length; i++) {
            double off = (amps[i] - model(at, i)) / sigmas[i];
            cost += off * off;
        }
        for (int k = 0; k < OF_A_LOAD * parts.size(); k++) {
            double off = beforehand(at, k);
            cost += off * off;
        }
        return Double.isNaN(cost) ? Double.POSITIVE_INFINITY : cost;
    }

    private double known(int figure) {
        Part part = parts.get(figure / OF_A_LOAD);
        return switch (figure % OF_A_LOAD) {
            case 0 -> part.amps();
            case 1 -> part.surgeAmps();
            case 2 -> Math.log(part.halfSeconds());
            default -> part.radians();
        };
    }

    private double spread(int figure) {
        Part part = parts.get(figure / OF_A_LOAD);
        return switch (figure % OF_A_LOAD) {
            case 0 -> part.ampsSpread();
            case 1 -> part.surgeSpread();
            case 2 -> part.halfSpread();
            default -> RADIANS_SPREAD;
        };
    }

    private double beforehand(double[] at, int figure) {
        return (known(figure) - at[1 + figure]) / spread(figure);
    }

    private double[] step(double hold) {
        int known = OF_A_LOAD * parts.size();
        int rows = amps.length + known + (hold > 0 ? known : 0);
        double[][] columns = new double[figures.length][rows];
        double[] left = new double[rows];
        for (int i = 0; i < amps.length; i++) {
            row(i, columns, left);
        }
        for (int k = 0; k < known; k++) {
            columns[1 + k][amps.length + k] = 1 / spread(k);
            left[amps.length + k] = beforehand(figures, k);
            if (hold > 0) {
                columns[1 + k][amps.length + known + k] = Math.sqrt(hold) * length(columns[1 + k]);
            }
        }
        LeastSquares squares = new LeastSquares(columns, left);
        double[] there = figures.clone();
        if (squares.isUnique()) {
            for (int k = 0; k < there.length; k++) {
                there[k] += squares.part(k);
            }
        }
        return there;
    }

    private static double length(double[] column) {
        double squares = 0;
        for (double each : column) {
            squares += each * each;
        }
        return Math.sqrt(squares);
    }

    private void row(int i, double[][] columns, double[] left) {
        double real = figures[0];
        double imaginary = 0;
        double[] decays = new double[parts.size()];
        for (int k = 0; k < parts.size(); k++) {
            double since = seconds[i] - parts.get(k).seconds();
            if (since > 0) {
                int first = 1 + OF_A_LOAD * k;
                decays[k] = Math.pow(2, -since / Math.exp(figures[first + 2]));
                double current = figures[first] + figures[first + 1] * decays[k];
                real += current * Math.cos(figures[first + 3]);
                imaginary += current * Math.sin(figures[first + 3]);
            }
        }
        double length = Math.max(1e-9, Math.hypot(real, imaginary));
        left[i] = (amps[i] - length) / sigmas[i];
        columns[0][i] = real / length / sigmas[i];
        for (int k = 0; k < parts.size(); k++) {
            double since = seconds[i] - parts.get(k).seconds();
            if (since > 0) {
                int first = 1 + OF_A_LOAD * k;
                double cos = Math.cos(figures[first + 3]);
                double sin = Math.sin(figures[first + 3]);
                double along = (real * cos + imaginary * sin) / length / sigmas[i];
                double across = (imaginary * cos - real * sin) / length / sigmas[i];
                double half = Math.exp(figures[first + 2]);
                columns[first][i] = along;
                columns[first + 1][i] = along * decays[k];
                columns[first + 2][i] = along * figures[first + 1] * decays[k] * Math.log(2) * since / half;
                columns[first + 3][i] = across * (figures[first] + figures[first + 1] * decays[k]);
            }
        }
    }

    /** Squared deviations of samples and of what was known beforehand, in variances. */
    double cost() {
        return cost;
    }

    /** The same of samples alone, for each. */
    double perSample() {
        double sum = 0;
        for (int i = 0; i < amps.length; i++) {
            double off = (amps[i] - model(figures, i)) / sigmas[i];
            sum += off * off;
        }
        return sum / Math.max(1, amps.length);
    }
}
