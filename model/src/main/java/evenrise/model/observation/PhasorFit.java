package evenrise.model.observation;

import java.util.Arrays;
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

    private static final int ROUNDS = 60;
    private static final int HOLDS = 6;
    private static final double LEAST_HOLD = 0.03;
    private static final double ENOUGH = 0.01;

    /** Figures of a load: current, surge, logarithm of its half-life, angle, logarithm of the power of time that it decays by. */
    private static final int OF_A_LOAD = 5;

    private final double[] seconds;
    private final double[] amps;
    private final double sigmaAmps;
    private final double[] sigmas;
    private final List<Part> parts;
    private double[] figures;
    private double shapeSpread = SHAPE_SPREAD;
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

    /**
     * Standard deviation of the logarithm of the power of time: surges of transformers have longer tails than an exponential,
     * those of motors shoulders (common practice, no source).
     */
    private static final double SHAPE_SPREAD = 0.4;

    private static final double AS_GOOD_AS_NONE = 1e-4;

    /** No half-life, angle or power changes by more in a round. */
    private static final double MOST_AT_ONCE = 0.7;

    /** How far angles may be off. */
    private static final double RADIANS_SPREAD = 0.25;

    /**
     * @param sigmaAmps of a sample
     * @param before what flowed before, to begin with
     */
    PhasorFit(double[] seconds, double[] amps, double sigmaAmps, double before, List<Part> parts) {
        this(
                seconds,
                amps,
                sigmaAmps,
                before,
                parts,
                parts.stream().map(PhasorFit::asKnown).toList());
        // From an exponential on; with everything free at once it would go astray.
        shapeSpread = AS_GOOD_AS_NONE;
        fit();
        shapeSpread = SHAPE_SPREAD;
        fit();
    }

    /** The same from other figures on. */
    PhasorFit from(double before, List<double[]> begin) {
        PhasorFit other = new PhasorFit(seconds, amps, sigmaAmps, before, parts, begin);
        other.fit();
        return other;
    }

    private static double[] asKnown(Part part) {
        return new double[] {part.amps(), part.surgeAmps(), Math.log(part.halfSeconds()), part.radians(), 0};
    }

    private PhasorFit(
            double[] seconds, double[] amps, double sigmaAmps, double before, List<Part> parts, List<double[]> begin) {
        this.seconds = seconds;
        this.amps = amps;
        this.sigmaAmps = sigmaAmps;
        this.parts = parts;
        this.sigmas = new double[amps.length];
        figures = new double[1 + OF_A_LOAD * parts.size()];
        figures[0] = before;
        for (int k = 0; k < parts.size(); k++) {
            System.arraycopy(begin.get(k), 0, figures, 1 + OF_A_LOAD * k, OF_A_LOAD);
        }
        double least = Double.POSITIVE_INFINITY;
        for (int i = amps.length - 1; i >= 0; i--) {
            least = Math.min(least, amps[i]);
            sigmas[i] = Math.hypot(sigmaAmps, UNLIKE * (amps[i] - least));
        }
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
                double current = at[first] + at[first + 1] * Math.pow(2, -halves(at, first, since));
                real += current * Math.cos(at[first + 3]);
                imaginary += current * Math.sin(at[first + 3]);
            }
        }
        return Math.hypot(real, imaginary);
    }

    /** How often a surge has halved: as a power of time. */
    private static double halves(double[] at, int first, double since) {
        double halves = since / Math.exp(at[first + 2]);
        return at[first + 4] == 0 ? halves : Math.pow(halves, Math.exp(at[first + 4]));
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
            case 3 -> part.radians();
            default -> 0;
        };
    }

    private double spread(int figure) {
        Part part = parts.get(figure / OF_A_LOAD);
        return switch (figure % OF_A_LOAD) {
            case 0 -> part.ampsSpread();
            case 1 -> part.surgeSpread();
            case 2 -> part.halfSpread();
            case 3 -> RADIANS_SPREAD;
            default -> shapeSpread;
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
            double part = 1;
            for (int k = 1; k < there.length; k++) {
                int figure = (k - 1) % OF_A_LOAD;
                if (figure >= 2) {
                    part = Math.min(part, MOST_AT_ONCE / Math.abs(squares.part(k)));
                }
            }
            for (int k = 0; k < there.length; k++) {
                there[k] += part * squares.part(k);
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
                decays[k] = Math.pow(2, -halves(figures, first, since));
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
                double halves = halves(figures, first, since);
                double power = Math.exp(figures[first + 4]);
                double slower = along * figures[first + 1] * decays[k] * Math.log(2) * halves;
                columns[first][i] = along;
                columns[first + 1][i] = along * decays[k];
                columns[first + 2][i] = slower * power;
                columns[first + 3][i] = across * (figures[first] + figures[first + 1] * decays[k]);
                columns[first + 4][i] = -slower * power * (Math.log(since) - figures[first + 2]);
            }
        }
    }

    /** What flowed before, as fitted. */
    double before() {
        return figures[0];
    }

    /** Of a part, as fitted: current, surge, logarithms and angle, to go on from. */
    double[] figures(int part) {
        int first = 1 + OF_A_LOAD * part;
        return Arrays.copyOfRange(figures, first, first + OF_A_LOAD);
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
