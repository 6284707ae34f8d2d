package evenrise.model.electrical;

import evenrise.model.project.Load;

/**
 * How far a fundamental current lies behind its voltage.
 *
 * @param radians positive where it lags, negative where it leads
 */
public record Lag(double radians) {
    /** Of a current in phase with its voltage. */
    public static final Lag NONE = new Lag(0);

    /** Behind by this displacement power factor, in (0, 1]. */
    public static Lag behind(double powerFactor) {
        return new Lag(Math.acos(powerFactor));
    }

    /** Ahead by this displacement power factor, in (0, 1]: as behind capacitors, and of lightly loaded rectifiers. */
    public static Lag ahead(double powerFactor) {
        return new Lag(-Math.acos(powerFactor));
    }

    public static Lag of(Load load) {
        return load.leading() ? ahead(load.powerFactor()) : behind(load.powerFactor());
    }

    /** The power factor. */
    public double cosine() {
        return Math.cos(radians);
    }

    /** Reactive over apparent current; negative where it leads. */
    public double sine() {
        return Math.sin(radians);
    }
}
