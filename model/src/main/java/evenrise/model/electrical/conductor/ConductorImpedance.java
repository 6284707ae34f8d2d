package evenrise.model.electrical.conductor;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import java.util.Map;

/**
 * Impedance of one conductor of a cable to alternating current.
 *
 * <p>American sizes: NEC chapter 9 table 9 (60 Hz, 75 °C), read in a copy in open-source code whose reactances of 10 and 8
 * AWG are corrected by two others. The table ends at 500 and goes on with 600, 750 and 1000 kcmil; 700, 800 and 900 stand
 * on the straight line between their neighbours, which is above the curve. Metric: the greatest resistance at 20 °C of IEC
 * 60228 class 2, read in several copies (aluminium below 10 mm², which the standard does not have: a tenth above its
 * resistivity), with 0.08 Ω/km of reactance (typical, from memory).
 *
 * <p>Resistance goes with the conductor's temperature by 1 + α·(T − 20), α = 0.00393 of copper and 0.00403 of aluminium (IEC
 * 60228). Of an American conductor that takes the part of skin and proximity effect along, which grows as it cools: the cold
 * resistance is then a little low, and its fault current a little high.
 */
public final class ConductorImpedance {
    private static final double METRES_PER_KILOFOOT = 304.8;
    private static final double AMERICAN_CELSIUS = 75;
    private static final double ALUMINIUM_RISE = 0.00403;
    private static final double COPPER_RISE = 0.00393;
    private static final double METRIC_REACTANCE_OHMS_PER_KM = 0.08;

    /** Ω per 1000 ft at 75 °C, by {@link ConductorSize#AMERICAN}. */
    private static final Map<Conduit, double[]> AMERICAN_COPPER = Map.of(
            Conduit.NONMETALLIC,
            new double[] {
                3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.19, 0.15, 0.12, 0.10, 0.077, 0.062, 0.052, 0.044, 0.038, 0.033,
                0.027, 0.023, 0.0204, 0.019, 0.0182, 0.0166, 0.015
            },
            Conduit.ALUMINIUM,
            new double[] {
                3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.20, 0.16, 0.13, 0.10, 0.082, 0.067, 0.057, 0.049, 0.043, 0.038,
                0.032, 0.028, 0.0254, 0.024, 0.0230, 0.0210, 0.019
            },
            Conduit.STEEL,
            new double[] {
                3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.20, 0.16, 0.12, 0.10, 0.079, 0.063, 0.054, 0.045, 0.039, 0.035,
                0.029, 0.025, 0.0224, 0.021, 0.0204, 0.0192, 0.018
            });

    /** The same; 14 AWG, which is not made, by the resistance to direct current of table 8. */
    private static final Map<Conduit, double[]> AMERICAN_ALUMINIUM = Map.of(
            Conduit.NONMETALLIC,
            new double[] {
                5.1, 3.2, 2.0, 1.3, 0.81, 0.51, 0.40, 0.32, 0.25, 0.20, 0.16, 0.13, 0.10, 0.085, 0.071, 0.061, 0.054,
                0.043, 0.036, 0.0314, 0.029, 0.0278, 0.0254, 0.023
            },
            Conduit.ALUMINIUM,
            new double[] {
                5.1, 3.2, 2.0, 1.3, 0.81, 0.51, 0.41, 0.32, 0.26, 0.21, 0.16, 0.13, 0.11, 0.090, 0.076, 0.066, 0.059,
                0.048, 0.041, 0.0364, 0.034, 0.0326, 0.0298, 0.027
            },
            Conduit.STEEL,
            new double[] {
                5.1, 3.2, 2.0, 1.3, 0.81, 0.51, 0.40, 0.32, 0.25, 0.20, 0.16, 0.13, 0.10, 0.086, 0.072, 0.063, 0.055,
                0.045, 0.038, 0.0334, 0.031, 0.0298, 0.0274, 0.025
            });

    private static final double[] AMERICAN_REACTANCE = {
        0.058, 0.054, 0.050, 0.052, 0.051, 0.048, 0.047, 0.045, 0.046, 0.044, 0.043, 0.042, 0.041, 0.041, 0.041, 0.040,
        0.040, 0.039, 0.039, 0.0384, 0.038, 0.0378, 0.0374, 0.037
    };

    private static final double[] AMERICAN_REACTANCE_IN_STEEL = {
        0.073, 0.068, 0.063, 0.065, 0.064, 0.060, 0.059, 0.057, 0.057, 0.055, 0.054, 0.052, 0.051, 0.052, 0.051, 0.050,
        0.049, 0.048, 0.048, 0.048, 0.048, 0.0476, 0.0468, 0.046
    };

    /** Ω per km at 20 °C, by {@link ConductorSize#METRIC}. */
    private static final double[] METRIC_COPPER = {
        12.1, 7.41, 4.61, 3.08, 1.83, 1.15, 0.727, 0.524, 0.387, 0.268, 0.193, 0.153, 0.124, 0.0991, 0.0754, 0.0601
    };

    private static final double[] METRIC_ALUMINIUM = {
        20.7, 12.4, 7.8, 5.2, 3.08, 1.91, 1.20, 0.868, 0.641, 0.443, 0.320, 0.253, 0.206, 0.164, 0.125, 0.100
    };

    private ConductorImpedance() {}

    /** Of one conductor, in Ω per km, at {@code conductorCelsius}. */
    public static Impedance perKilometre(
            ConductorSize size, ConductorMaterial material, Conduit conduit, double conductorCelsius) {
        boolean isCopper = material == ConductorMaterial.COPPER;
        double rise = isCopper ? COPPER_RISE : ALUMINIUM_RISE;
        double fromTwenty = 1 + rise * (conductorCelsius - 20);
        if (size.isMetric()) {
            double cold = (isCopper ? METRIC_COPPER : METRIC_ALUMINIUM)[size.index()];
            return new Impedance(cold * fromTwenty, METRIC_REACTANCE_OHMS_PER_KM);
        }
        double warm = (isCopper ? AMERICAN_COPPER : AMERICAN_ALUMINIUM).get(conduit)[size.index()];
        double reactance = (conduit == Conduit.STEEL ? AMERICAN_REACTANCE_IN_STEEL : AMERICAN_REACTANCE)[size.index()];
        return new Impedance(
                perKilometre(warm) * fromTwenty / (1 + rise * (AMERICAN_CELSIUS - 20)), perKilometre(reactance));
    }

    private static double perKilometre(double perKilofoot) {
        return perKilofoot * 1000 / METRES_PER_KILOFOOT;
    }
}
