package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;

/** Symmetrical rms fault currents. Motors that feed back are left out. */
public final class FaultCurrent {
    /** Tolerance of a transformer's impedance voltage, UL 1561: it may be a tenth less than stated (read in a handbook). */
    public static final double LEAST_IMPEDANCE_RATIO = 0.9;

    /** The other end of that tolerance. */
    public static final double GREATEST_IMPEDANCE_RATIO = 1.1;

    /** Greatest voltage factor of IEC 60909 for low voltage of ±10 % (from memory; 1.05 for ±6 %, read in one copy). */
    public static final double GREATEST_VOLTAGE_FACTOR = 1.1;

    /**
     * Least voltage factor: 0.95 by IEC 60909-0 of 2001 and BS 7671 (its edition of 2016 has 0.90 for networks of ±10 %, from
     * memory), and 114 of 120 V by range A of ANSI C84.1.
     */
    public static final double LEAST_VOLTAGE_FACTOR = 0.95;

    /** Temperature of conductors for the greatest current: IEC 60909-0. */
    public static final double COLD_CELSIUS = 20;

    private FaultCurrent() {}

    /** Of a bolted fault of all phases, or of a line to neutral with the whole loop as the impedance. */
    public static double amps(double voltageFactor, double lineToNeutralVolts, Impedance impedance) {
        return voltageFactor * lineToNeutralVolts / impedance.magnitudeOhms();
    }
}
