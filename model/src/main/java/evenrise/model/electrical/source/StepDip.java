package evenrise.model.electrical.source;

/** Voltage dip when a current is switched on, in percent of the nominal voltage. */
public final class StepDip {
    private StepDip() {}

    /**
     * The most that a linear dip d can be where what draws the current is an impedance Zl behind the source's Zs, both between
     * a resistance and a reactance: |Zs|/|Zs + Zl| is at most |Zs|/√(|Zs|² + |Zl|²), as their angles differ by at most 90°,
     * which is d/√(1 + d²). Always less than 100.
     */
    public static double mostPercent(double linearPercent) {
        return linearPercent / Math.hypot(1, linearPercent / 100);
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
