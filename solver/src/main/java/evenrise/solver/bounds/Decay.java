package evenrise.solver.bounds;

/**
 * Weights of instants, seen by a load: what a load draws, weighted over all instants, if it comes on at each of them. One
 * pass over the instants for each half-life, by the recursion of a geometric series.
 */
final class Decay {
    private final int full;
    private final double[] afterFull;
    private final double[] aStep;

    Decay(BoundedProject subject) {
        this(subject.grid, subject.toleranceSeconds, subject.halfLifeSeconds);
    }

    Decay(TimeGrid grid, double toleranceSeconds, double[] halfLifeSeconds) {
        int slack = grid.exact() ? 0 : 1;
        double step = grid.stepSeconds();
        double flat = 2 * toleranceSeconds;
        full = Math.max(0, (int) Math.floor(flat / step + 1e-9) + 1 - slack);
        afterFull = new double[halfLifeSeconds.length];
        aStep = new double[afterFull.length];
        for (int h = 0; h < aStep.length; h++) {
            double elapsed = Math.max(0, (full + slack) * step - flat);
            afterFull[h] = Math.pow(2, -elapsed / halfLifeSeconds[h]);
            aStep[h] = Math.pow(2, -step / halfLifeSeconds[h]);
        }
    }

    /** Sum of the weights from each instant on. */
    static double[] suffix(double[] weights) {
        double[] sum = new double[weights.length + 1];
        for (int i = weights.length - 1; i >= 0; i--) {
            sum[i] = sum[i + 1] + weights[i];
        }
        return sum;
    }

    /** For each instant: the weights from there on, each times what is left of an excess of 1 that starts there. */
    double[] weighed(double[] weights, double[] suffix, int halfLife) {
        int n = weights.length;
        double[] out = new double[n];
        double rest = 0;
        for (int i = n - 1; i >= 0; i--) {
            rest = rest * aStep[halfLife] + (i + full < n ? weights[i + full] * afterFull[halfLife] : 0);
            out[i] = suffix[i] - suffix[Math.min(n, i + full)] + rest;
        }
        return out;
    }

    /** Adds to {@code sums} what is left at each instant of excesses that start at each instant. */
    void spread(double[] excess, int halfLife, double[] sums) {
        int n = sums.length;
        double flat = 0;
        double rest = 0;
        for (int j = 0; j < n; j++) {
            rest *= aStep[halfLife];
            flat += excess[j];
            if (j >= full) {
                flat -= excess[j - full];
                rest += excess[j - full] * afterFull[halfLife];
            }
            sums[j] += (full > 0 ? flat : 0) + rest;
        }
    }
}
