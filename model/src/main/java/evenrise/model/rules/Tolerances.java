package evenrise.model.rules;

/** How far a figure may pass its limit before a rule counts it as broken: rounding in files, not slack in the plant. */
public final class Tolerances {
    /** Half a millisecond, for every comparison of times. */
    public static final double SECONDS = 5e-4;

    /** A microampere, for every comparison of currents. */
    public static final double AMPS = 1e-6;

    private Tolerances() {}
}
