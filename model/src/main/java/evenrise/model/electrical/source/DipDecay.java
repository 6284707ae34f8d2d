package evenrise.model.electrical.source;

/**
 * A dip as it dies down: a sum of parts, each of which halves in its own time, as {@link StepDip#mostPercent} leaves it.
 *
 * @param percents linear, of each part at the beginning
 * @param halfLifeSeconds of each part
 */
public record DipDecay(double[] percents, double[] halfLifeSeconds) {
    private static final int HALVINGS = 60;

    public double percentAfter(double seconds) {
        double sum = 0;
        for (int i = 0; i < percents.length; i++) {
            sum += percents[i] * Math.pow(2, -seconds / halfLifeSeconds[i]);
        }
        return StepDip.mostPercent(sum);
    }

    /** How long it stays above {@code percent}; 0 where it never is. */
    public double secondsAbove(double percent) {
        if (percentAfter(0) <= percent) {
            return 0;
        }
        if (percent <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        double above = 0;
        double below = 1e-3;
        while (percentAfter(below) > percent) {
            above = below;
            below *= 2;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (above + below) / 2;
            if (percentAfter(middle) > percent) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return above;
    }
}
