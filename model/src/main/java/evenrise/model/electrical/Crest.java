package evenrise.model.electrical;

/** How far the crest of a current lies above its rms value. */
public final class Crest {
    /** Of a sine. */
    public static final double SINE = Math.sqrt(2);

    private Crest() {}

    /**
     * Greatest crest over rms of a fundamental and a third harmonic, whatever the angle between them: both crests meet, as
     * those of a rectifier's current do. √2·(1 + r)/√(1 + r²).
     *
     * @param ratio third harmonic over fundamental; at least 0
     */
    public static double ofThirdHarmonic(double ratio) {
        return SINE * (1 + ratio) / Math.hypot(1, ratio);
    }
}
