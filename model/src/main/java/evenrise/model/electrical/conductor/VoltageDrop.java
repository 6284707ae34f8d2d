package evenrise.model.electrical.conductor;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.Phasor;

/**
 * Steady voltage drop along a cable that feeds one load. The voltage is that which the load is fed with: to neutral or
 * between lines for a load on two conductors, between lines for a balanced one on three. The lag is the load's, taken
 * against the voltage at the sending end; a load that leads may find a voltage that has risen.
 */
public final class VoltageDrop {
    private VoltageDrop() {}

    /** How many conductor impedances the drop counts: 2 there and back, √3 between lines of three. */
    public static double ways(boolean isThreePhase) {
        return isThreePhase ? Math.sqrt(3) : 2;
    }

    /** V − |V − ways·I·(cosφ − j·sinφ)·(R + jX)|. */
    public static double exactVolts(double volts, double amps, Lag lag, Impedance conductor, double ways) {
        Phasor drop = Phasor.polar(ways * amps, -lag.radians()).times(conductor);
        return volts - new Phasor(volts - drop.real(), -drop.imaginary()).length();
    }
}
