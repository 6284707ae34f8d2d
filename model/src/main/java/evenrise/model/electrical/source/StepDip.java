package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Phasor;

/** Voltage dip when a current is switched on, in percent of the nominal voltage. */
public final class StepDip {
    private StepDip() {}

    /** The usual approximation: 100·I·(R·cosφ + X·sinφ)/V. */
    public static double approximatePercent(double amps, double powerFactor, Impedance source, double volts) {
        double sin = Math.sqrt(1 - powerFactor * powerFactor);
        return 100 * amps * (source.resistanceOhms() * powerFactor + source.reactanceOhms() * sin) / volts;
    }

    /** By phasors, the current taken against the voltage before the step. */
    public static double exactPercent(double amps, double powerFactor, Impedance source, double volts) {
        Phasor drop = Phasor.polar(amps, -Math.acos(powerFactor)).times(source);
        return 100 * (volts - new Phasor(volts - drop.real(), -drop.imaginary()).length()) / volts;
    }

    /** Whatever the power factor, at most: 100·I·|Z|/V. */
    public static double mostPercent(double amps, Impedance source, double volts) {
        return 100 * amps * source.magnitudeOhms() / volts;
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
