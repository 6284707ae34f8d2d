package evenrise.model.electrical;

import evenrise.model.project.PhaseSystem;

/** Power and current of a load of one, two or three poles. */
public final class LinePower {
    /** Watts to BTU per hour: 3600 s/h over 1055.056 J (BTU of the International Table). */
    public static final double BTU_PER_HOUR_PER_WATT = 3600 / 1055.05585262;

    private LinePower() {}

    /**
     * Apparent power over line current: V for one pole, the voltage between lines for two, √3 times it for three.
     *
     * @param lineToNeutralVolts nominal, rms
     */
    public static double voltAmpsPerAmp(PhaseSystem system, int poles, double lineToNeutralVolts) {
        if (poles == 1) {
            return lineToNeutralVolts;
        }
        if (poles == 2) {
            return lineToNeutralVolts * (system == PhaseSystem.SPLIT_PHASE ? 2 : Math.sqrt(3));
        }
        return 3 * lineToNeutralVolts;
    }

    /** Rms over fundamental current of a load with a third harmonic of {@code k} times the fundamental: √(1 + k²). */
    public static double rmsOverFundamental(double thirdHarmonic) {
        return Math.sqrt(1 + thirdHarmonic * thirdHarmonic);
    }

    /** Active power of an rms line current; the fundamental alone carries it. */
    public static double watts(double voltAmpsPerAmp, double amps, double powerFactor, double thirdHarmonic) {
        return voltAmpsPerAmp * powerFactor * amps / rmsOverFundamental(thirdHarmonic);
    }

    /** Rms line current of an active power; inverse of {@link #watts}. */
    public static double amps(double voltAmpsPerAmp, double watts, double powerFactor, double thirdHarmonic) {
        return watts / (voltAmpsPerAmp * powerFactor) * rmsOverFundamental(thirdHarmonic);
    }
}
