package evenrise.model.electrical;

/**
 * The neutral of a balanced three-phase circuit whose loads draw a third harmonic: in it the fundamentals cancel and the
 * third harmonics add. Two conventions are in use for the same number k, and they differ by √(1 + k²):
 *
 * <ul>
 *   <li>k is the third harmonic over the <em>fundamental</em>, as meters print it and as {@code third_harmonic} is defined
 *       in the project file;
 *   <li>k is the third harmonic over the <em>design line current</em>, as the table of IEC 60364-5-52 annex E takes it.
 * </ul>
 */
public final class TriplenNeutral {
    /**
     * Greatest neutral over line current, both rms, of capacitor-input rectifiers: pulses of three phases that do not
     * overlap add their squares (principle from memory; √3 computed). More than this from a formula means that its inputs
     * do not belong together.
     */
    public static final double RECTIFIER_CEILING_RATIO = Math.sqrt(3);

    private TriplenNeutral() {}

    /** Neutral over design line current for a third harmonic of {@code k} times the design line current: 3k. */
    public static double ratioByLineCurrent(double k) {
        return 3 * k;
    }
}
