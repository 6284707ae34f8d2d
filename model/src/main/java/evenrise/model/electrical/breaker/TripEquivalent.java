package evenrise.model.electrical.breaker;

/**
 * What an inrush counts for at an instantaneous trip, which needs a half-cycle to act. An inrush that lasts as long as that
 * counts as a sine of the same crest; a shorter pulse counts as the steady current of the same ∫i²dt over a half-cycle
 * (common practice, no source; magnetic trips answer to the square of the current).
 */
public final class TripEquivalent {
    private TripEquivalent() {}

    /** Crest over √2: the whole peak taken for a sine. */
    public static double sineAmps(double peakAmps) {
        return peakAmps / Math.sqrt(2);
    }

    /**
     * Rms over one half-cycle of a pulse that begins at {@code peakAmps} and halves every {@code halfLifeSeconds}, never
     * more than {@link #sineAmps}.
     */
    public static double pulseAmps(double peakAmps, double halfLifeSeconds, double frequencyHertz) {
        double halfCycle = 1 / (2 * frequencyHertz);
        double decay = halfLifeSeconds / Math.log(2);
        double squares = peakAmps * peakAmps * decay / 2 * -Math.expm1(-2 * halfCycle / decay);
        return Math.min(sineAmps(peakAmps), Math.sqrt(squares / halfCycle));
    }

    /**
     * Rms that a load's inrush counts for: the pulse above the base, and the base on top of it, as an rms sum never exceeds
     * the sum of the parts.
     *
     * @param baseAmps rms idle current
     * @param peakAmps instantaneous peak at switch-on
     */
    public static double inrushAmps(double baseAmps, double peakAmps, double halfLifeSeconds, double frequencyHertz) {
        double excess = Math.max(0, peakAmps - Math.sqrt(2) * baseAmps);
        return baseAmps + pulseAmps(excess, halfLifeSeconds, frequencyHertz);
    }
}
