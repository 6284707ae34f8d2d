package evenrise.model.electrical;

/** Resistance and inductive reactance in series. */
public record Impedance(double resistanceOhms, double reactanceOhms) {
    public static final Impedance ZERO = new Impedance(0, 0);

    public Impedance plus(Impedance other) {
        return new Impedance(resistanceOhms + other.resistanceOhms, reactanceOhms + other.reactanceOhms);
    }

    public Impedance times(double factor) {
        return new Impedance(factor * resistanceOhms, factor * reactanceOhms);
    }

    /** As a complex number. */
    public Phasor complex() {
        return new Phasor(resistanceOhms, reactanceOhms);
    }

    public double magnitudeOhms() {
        return Math.hypot(resistanceOhms, reactanceOhms);
    }
}
