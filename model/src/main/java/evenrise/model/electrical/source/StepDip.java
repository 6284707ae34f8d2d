package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.Phasor;

/** Voltage dip when a current is switched on, in percent of the nominal voltage. */
public final class StepDip {
    private StepDip() {}

    /** The usual approximation: 100·I·(R·cosφ + X·sinφ)/V. */
    public static double approximatePercent(double amps, Lag lag, Impedance source, double volts) {
        return 100 * amps * (source.resistanceOhms() * lag.cosine() + source.reactanceOhms() * lag.sine()) / volts;
    }

    /** By phasors, the current taken against the voltage before the step. */
    public static double exactPercent(double amps, Lag lag, Impedance source, double volts) {
        Phasor drop = Phasor.polar(amps, -lag.radians()).times(source);
        return 100 * (volts - new Phasor(volts - drop.real(), -drop.imaginary()).length()) / volts;
    }

    /** By current alone, whatever the power factor: 100·I·|Z|/V. More than 100 where the current could not flow. */
    public static double linearPercent(double amps, Impedance source, double volts) {
        return 100 * amps * source.magnitudeOhms() / volts;
    }

    /**
     * The most that a linear dip d can be where what draws the current is an impedance Zl behind the source's Zs, both between
     * a resistance and a reactance: |Zs|/|Zs + Zl| is at most |Zs|/√(|Zs|² + |Zl|²), as their angles differ by at most 90°,
     * which is d/√(1 + d²). Always less than 100.
     */
    public static double mostPercent(double linearPercent) {
        return linearPercent / Math.hypot(1, linearPercent / 100);
    }

    /** Inverse of {@link #mostPercent}; {@code percent} below 100. */
    public static double linearOfMostPercent(double percent) {
        return percent / Math.sqrt(1 - percent / 100 * percent / 100);
    }

    /**
     * What a linear dip becomes where the step is a constant impedance that the dip itself reduces: d/(1 + d). Of a generator,
     * with d = X·S/Sn, it is the divider X/(X + Sn/S) (from memory; the same as locked rotor over locked rotor plus fault
     * current).
     */
    public static double dividedPercent(double linearPercent) {
        return linearPercent / (1 + linearPercent / 100);
    }
}
