package evenrise.model.electrical.source;

/**
 * A dip as it dies down: a sum of parts, each of which halves in its own time or stays, as {@link StepDip#mostPercent} leaves
 * it. It is flat for the first half-cycle, over which its depth is an rms.
 *
 * @param percents linear, of each part at the beginning
 * @param halfLifeSeconds of each part; infinite for one that stays
 * @param flatSeconds half a period
 */
public record DipDecay(double[] percents, double[] halfLifeSeconds, double flatSeconds) {
    private static final int HALVINGS = 60;

    public double percentAfter(double seconds) {
        double sum = 0;
        for (int i = 0; i < percents.length; i++) {
            sum += percents[i] * Math.pow(2, -Math.max(0, seconds - flatSeconds) / halfLifeSeconds[i]);
        }
        return StepDip.mostPercent(sum);
    }

    /** How long it stays above {@code percent}: 0 where it never is, infinite where it always is. */
    public double secondsAbove(double percent) {
        if (percentAfter(0) <= percent) {
            return 0;
        }
        if (stayingPercent() > percent || percent <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        double above = 0;
        double below = Math.max(1e-3, flatSeconds);
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

    private double stayingPercent() {
        double sum = 0;
        for (int i = 0; i < percents.length; i++) {
            sum += Double.isInfinite(halfLifeSeconds[i]) ? percents[i] : 0;
        }
        return StepDip.mostPercent(sum);
    }
}
