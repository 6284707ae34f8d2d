package evenrise.model.nodal;

/**
 * What a load draws of a plant's fundamental.
 *
 * @param amps rms in each line, at nominal voltage
 * @param lagRadians behind the voltage that feeds it, from 0 for a resistance to π/2 for a reactance
 * @param isImpedance whether its current follows its voltage; else it flows whatever that is, at its angle to the nominal one
 */
public record Drawing(double amps, double lagRadians, boolean isImpedance) {
    public static Drawing current(double amps, double powerFactor) {
        return new Drawing(amps, Math.acos(powerFactor), false);
    }

    public static Drawing impedance(double amps, double lagRadians) {
        return new Drawing(amps, lagRadians, true);
    }
}
