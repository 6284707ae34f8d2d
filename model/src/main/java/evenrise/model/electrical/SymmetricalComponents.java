package evenrise.model.electrical;

/**
 * Fortescue's components of three phasors, referred to phase A: with a = 1∠120°, zero sequence (A + B + C)/3, positive (A +
 * aB + a²C)/3, negative (A + a²B + aC)/3. The rotation is A before B before C, so B of a balanced system lags A by 120°.
 * The negative sequence heats generators and motors; three times the zero sequence returns through the neutral.
 *
 * <p>Source: C. L. Fortescue, Method of Symmetrical Co-ordinates, 1918; any textbook of power systems since.
 */
public record SymmetricalComponents(Phasor zero, Phasor positive, Phasor negative) {
    private static final double THIRD_TURN = 2 * Math.PI / 3;

    public static SymmetricalComponents of(Phasor a, Phasor b, Phasor c) {
        return new SymmetricalComponents(
                a.plus(b).plus(c).times(1.0 / 3),
                a.plus(b.turned(THIRD_TURN)).plus(c.turned(-THIRD_TURN)).times(1.0 / 3),
                a.plus(b.turned(-THIRD_TURN)).plus(c.turned(THIRD_TURN)).times(1.0 / 3));
    }

    /** Negative over positive sequence, in percent; 0 where there is no positive one. */
    public double negativePercent() {
        return over(negative);
    }

    /** Zero over positive sequence, in percent; 0 where there is no positive one. */
    public double zeroPercent() {
        return over(zero);
    }

    private double over(Phasor sequence) {
        return positive.length() == 0 ? 0 : 100 * sequence.length() / positive.length();
    }
}
