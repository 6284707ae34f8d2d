package evenrise.model.electrical;

import evenrise.model.project.Load;

/**
 * Upper bound, at the voltage and with the crest that it is made for, of the instantaneous current that one pole of a load draws from its switch-on, whenever within the timing
 * tolerance the breaker really closes: nothing until the earliest closing time, then the full peak for twice the
 * tolerance, then an excess over the base that halves in every half-life. It never rises after it has started.
 *
 * @param baseAmps crest of the idle current; what stays
 * @param excessAmps how far the peak at switch-on exceeds the base; at least 0
 * @param halfLifeSeconds time in which the excess halves; more than 0
 * @param toleranceSeconds a breaker closes within this time of its nominal step, either side; at least 0
 */
public record InrushEnvelope(double baseAmps, double excessAmps, double halfLifeSeconds, double toleranceSeconds) {

    /** Instants closer together than this count as one; far below what any contact repeats. */
    public static final double SAME_INSTANT_SECONDS = 1e-12;

    /** The envelope of {@code load} at nominal voltage, its idle current a sine: an instantaneous peak below the base counts as no inrush. */
    public static InrushEnvelope of(Load load, double toleranceSeconds) {
        return new InrushEnvelope(load.baseAmps(), load.excessAmps(), load.inrushHalfMillis() / 1000, toleranceSeconds);
    }

    /** A part of it, as what a transformer passes on. */
    public InrushEnvelope times(double factor) {
        return new InrushEnvelope(factor * baseAmps, factor * excessAmps, halfLifeSeconds, toleranceSeconds);
    }

    /** The same without what stays: the excess over the base. */
    public InrushEnvelope excessAlone() {
        return new InrushEnvelope(0, excessAmps, halfLifeSeconds, toleranceSeconds);
    }

    /**
     * The envelope of {@code load} over every voltage of {@code band}, from what is stated of it. The base is the crest of
     * its idle current, {@link #crestRatio}, at the voltage that makes it largest: the lowest for a constant power, the
     * highest for an impedance. The excess grows with the voltage. At the nominal voltage and with a sine it is {@link #of}.
     */
    public static InrushEnvelope within(Load load, double toleranceSeconds, VoltageBand band) {
        double crest = crestRatio(load);
        double excess = Math.max(0, load.inrushAmps() - Math.min(crest, Crest.SINE) * load.idleAmps());
        return new InrushEnvelope(
                crest * load.idleAmps() * band.steadyRatio(),
                excess * band.inrushRatio(),
                load.inrushHalfMillis() / 1000,
                toleranceSeconds);
    }

    /** Crest over rms of its idle current: as stated, else by its third harmonic, else a sine's. */
    public static double crestRatio(Load load) {
        return load.crestFactor().orElse(Crest.ofThirdHarmonic(load.harmonicRatio()));
    }

    /** Earliest instant at which a load that nominally comes on at {@code onSeconds} may draw. */
    public double startSeconds(double onSeconds) {
        return onSeconds - toleranceSeconds;
    }

    /** Current at {@code atSeconds} of a load that nominally comes on at {@code onSeconds}. */
    public double amps(double onSeconds, double atSeconds) {
        double start = startSeconds(onSeconds);
        return atSeconds < start - SAME_INSTANT_SECONDS ? 0 : baseAmps + excessAmps(atSeconds - start);
    }

    /** What is left of the excess of a load that was connected at a known instant, {@code seconds} later. */
    public double excessLeftAmps(double seconds) {
        return excessAmps * Math.pow(2, -seconds / halfLifeSeconds);
    }

    /** What is left of the excess {@code sinceStartSeconds} after the earliest closing time. */
    double excessAmps(double sinceStartSeconds) {
        double decaying = Math.max(0, sinceStartSeconds - 2 * toleranceSeconds);
        return excessAmps * Math.pow(2, -decaying / halfLifeSeconds);
    }
}
