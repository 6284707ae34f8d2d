package evenrise.model.observation;

/**
 * How much a current jumps at a sample: a smooth curve through both sides, with a step there, and a surge on it that decays
 * if that fits better. Of all such models the one that Schwarz's criterion prefers, of two windows the surer one.
 *
 * @param amps how much more flows once the surge is over
 * @param sigmaAmps standard deviation of that
 * @param jumpAmps how much more flows at once, with the surge
 * @param jumpSigmaAmps standard deviation of that
 * @param halfSeconds in which the surge halves; 0 without one
 * @param seenSeconds how long after the step was looked at
 */
record StepFit(
        double amps, double sigmaAmps, double jumpAmps, double jumpSigmaAmps, double halfSeconds, double seenSeconds) {
    /** Samples on each side that are looked at, at most. */
    private static final int[] WINDOWS = {40, 12};

    private static final int MOST_DEGREE = 3;

    /** Where so few samples are left over, their scatter says nothing of the fit. */
    private static final int FEW = 3;

    /** A surge that has halved so often is over. */
    private static final double HALVES = 12;

    private static final double MOST_HALVES = 16;

    /** So many samples after a surge say what flows then. */
    private static final int ENOUGH = 4;

    /** Surges are not quite as they are modelled: so much of what is left of one half-way may belong to the step. */
    static final double UNLIKE = 0.5;

    /** Nothing can be said. */
    static final StepFit NONE = new StepFit(0, Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY, 0, 0);

    /**
     * The sample itself is left out, since the step came within it.
     *
     * @param from first sample that belongs to what was before
     * @param to after the last sample that belongs to what came then
     */
    static StepFit of(double[] seconds, double[] amps, double sigmaAmps, int at, int from, int to) {
        StepFit best = NONE;
        for (int window : WINDOWS) {
            int first = Math.max(from, at - window);
            int last = Math.min(to, at + 1 + window);
            StepFit fit = at - first < 1 || last - at < 2
                    ? NONE
                    : best(new StepModel(seconds, amps, at, first, last, 0), sigmaAmps);
            best = fit.leastSigmaAmps() < best.leastSigmaAmps() ? fit : best;
        }
        return best.halfSeconds() == 0 ? best : best.settled(seconds, amps, sigmaAmps, at, from, to);
    }

    /** What flows after a surge, by what is seen once it is over, if there is enough of it. */
    private StepFit settled(double[] seconds, double[] amps, double sigmaAmps, int at, int from, int to) {
        int first = Math.max(from, at - WINDOWS[0]);
        int last = Math.min(to, at + 1 + WINDOWS[0]);
        double over = Math.min(PhaseSteps.SURGE_SECONDS, HALVES * halfSeconds);
        boolean isOver = halfSeconds <= seenSeconds / 2;
        if (!isOver || last - 1 - ENOUGH < at || seconds[last - 1 - ENOUGH] - seconds[at] <= over) {
            return this;
        }
        StepModel late = new StepModel(seconds, amps, at, first, last, over);
        StepFit fit = best(late, sigmaAmps);
        return fit.halfSeconds() > 0 || fit.sigmaAmps() >= sigmaAmps()
                ? this
                : new StepFit(fit.amps(), fit.sigmaAmps(), jumpAmps, jumpSigmaAmps, halfSeconds, fit.seenSeconds());
    }

    private static StepFit best(StepModel model, double sigmaAmps) {
        StepFit best = NONE;
        double least = Double.POSITIVE_INFINITY;
        double price = Math.log(Math.max(model.samples(), 3));
        for (int degree = 0; degree <= MOST_DEGREE; degree++) {
            int free = degree + 2;
            if (degree > 0 && 2 * free > model.samples()) {
                break;
            }
            LeastSquares plain = model.fit(degree, 0, false);
            if (!plain.isUnique()) {
                break;
            }
            double cost = plain.squares() / (sigmaAmps * sigmaAmps) + free * price;
            if (cost < least) {
                least = cost;
                best = plain(model, plain, degree, scatter(plain, sigmaAmps, model.samples() - free));
            }
            int more = degree + 4;
            double half = 2 * more <= model.samples() ? model.halfSeconds(degree, plain) : 0;
            if (half > 0) {
                LeastSquares surge = model.fit(degree, half, false);
                double surgeCost = surge.squares() / (sigmaAmps * sigmaAmps) + more * price;
                if (surgeCost < least) {
                    least = surgeCost;
                    best = surge(model, surge, degree, half, scatter(surge, sigmaAmps, model.samples() - more));
                }
            }
        }
        return best;
    }

    /** Standard deviation of a sample about the fit, no less than noise. */
    private static double scatter(LeastSquares fit, double sigmaAmps, int left) {
        return left < FEW
                ? 2 * sigmaAmps + Math.sqrt(fit.squares())
                : Math.max(sigmaAmps, Math.sqrt(fit.squares() / left));
    }

    private static StepFit plain(StepModel model, LeastSquares fit, int degree, double scatter) {
        double sigma = scatter * Math.sqrt(fit.variance(degree + 1));
        return new StepFit(fit.part(degree + 1), sigma, fit.part(degree + 1), sigma, 0, model.seenSeconds());
    }

    /** How sure the half-life is counts, too: by its derivative as a column of its own. */
    private static StepFit surge(StepModel model, LeastSquares fit, int degree, double half, double scatter) {
        int step = degree + 1;
        LeastSquares about = model.fit(degree, half, true);
        LeastSquares sure = about.isUnique() ? about : fit;
        // A surge of which one sample shows nothing leaves the step as sure as it is; one that outlasts the window does
        // not.
        double sigma = about.isUnique() || half < model.intervalSeconds()
                ? scatter * Math.sqrt(sure.variance(step))
                : Double.POSITIVE_INFINITY;
        double shape = UNLIKE * fit.part(step + 1) * Math.pow(2, -model.seenSeconds() / 2 / half);
        return new StepFit(
                fit.part(step),
                Math.hypot(sigma, shape),
                fit.part(step) + fit.part(step + 1),
                scatter * Math.sqrt(sure.variance(step, step + 1)),
                half,
                model.seenSeconds());
    }

    /** How often a surge halves until so much is left; no more than a few dozen times, however uncertain it is. */
    double halvesTo(double leftAmps) {
        double surge = jumpAmps - amps;
        return surge <= leftAmps ? 0 : Math.min(MOST_HALVES, Math.log(surge / leftAmps) / Math.log(2));
    }

    /** Whether it goes down at once, beyond doubt. */
    boolean isSureFall() {
        return jumpAmps < 0 && -jumpAmps > Observer.DEVIATIONS * jumpSigmaAmps;
    }

    private double leastSigmaAmps() {
        return Math.min(sigmaAmps, jumpSigmaAmps);
    }

    /** By how many of its standard deviations it jumps, at once or in the end. */
    double deviations() {
        return Math.max(Math.abs(jumpAmps) / jumpSigmaAmps, Math.abs(amps) / sigmaAmps);
    }
}
