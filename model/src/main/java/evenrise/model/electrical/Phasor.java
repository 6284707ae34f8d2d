package evenrise.model.electrical;

/** A sinusoidal current or voltage as a complex number: rms length, angle against a common reference. */
public record Phasor(double real, double imaginary) {
    public static final Phasor ZERO = new Phasor(0, 0);

    /** @param angleRadians positive where it leads the reference */
    public static Phasor polar(double length, double angleRadians) {
        return new Phasor(length * Math.cos(angleRadians), length * Math.sin(angleRadians));
    }

    public Phasor plus(Phasor other) {
        return new Phasor(real + other.real, imaginary + other.imaginary);
    }

    public Phasor minus(Phasor other) {
        return new Phasor(real - other.real, imaginary - other.imaginary);
    }

    public Phasor times(double factor) {
        return new Phasor(factor * real, factor * imaginary);
    }

    public Phasor times(Phasor other) {
        return new Phasor(
                real * other.real - imaginary * other.imaginary, real * other.imaginary + imaginary * other.real);
    }

    /** One over it; it has a length. */
    public Phasor inverse() {
        double squared = real * real + imaginary * imaginary;
        return new Phasor(real / squared, -imaginary / squared);
    }

    /** The voltage that this current drives across an impedance. */
    public Phasor times(Impedance impedance) {
        return new Phasor(
                real * impedance.resistanceOhms() - imaginary * impedance.reactanceOhms(),
                real * impedance.reactanceOhms() + imaginary * impedance.resistanceOhms());
    }

    /** The current that this voltage drives through an impedance, which is not zero. */
    public Phasor over(Impedance impedance) {
        double squared = impedance.resistanceOhms() * impedance.resistanceOhms()
                + impedance.reactanceOhms() * impedance.reactanceOhms();
        return times(new Impedance(impedance.resistanceOhms() / squared, -impedance.reactanceOhms() / squared));
    }

    /** Turned forward by an angle. */
    public Phasor turned(double radians) {
        double cos = Math.cos(radians);
        double sin = Math.sin(radians);
        return new Phasor(real * cos - imaginary * sin, real * sin + imaginary * cos);
    }

    public double length() {
        return Math.sqrt(real * real + imaginary * imaginary);
    }

    /** In (−π, π]; 0 for no length. */
    public double angleRadians() {
        return Math.atan2(imaginary, real);
    }
}
