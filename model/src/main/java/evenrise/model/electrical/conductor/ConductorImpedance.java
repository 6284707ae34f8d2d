package evenrise.model.electrical.conductor;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.Cable;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import java.util.Map;

/**
 * Impedance of one line conductor of a cable to alternating current.
 *
 * <p>American copper sizes: NEC chapter 9 table 9 (60 Hz, 75 °C), read in a copy in open-source code whose reactances of 10
 * and 8 AWG are corrected by two others. Metric copper: the greatest resistance at 20 °C of IEC 60228 class 2, read in
 * several copies, warmed to the conductor's temperature, with 0.08 Ω/km of reactance (typical, from memory). Aluminium:
 * computed from its resistivity at that temperature, with 2 % for stranding, and the same reactance.
 */
public final class ConductorImpedance {
    private static final double METRES_PER_KILOFOOT = 304.8;

    /** Resistivity at 20 °C in Ω·mm²/m and its rise per kelvin: aluminium (from memory) and copper. */
    private static final double ALUMINIUM_RESISTIVITY = 0.028264;

    private static final double ALUMINIUM_RISE = 0.00403;
    private static final double COPPER_RISE = 0.00393;
    private static final double STRANDING = 1.02;
    private static final double METRIC_REACTANCE_OHMS_PER_KM = 0.08;

    /** Ω per 1000 ft, by {@link ConductorSize#AMERICAN}. */
    private static final Map<Conduit, double[]> AMERICAN_RESISTANCE = Map.of(
            Conduit.NONMETALLIC,
            new double[] {
                3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.19, 0.15, 0.12, 0.10, 0.077, 0.062, 0.052, 0.044, 0.038, 0.033,
                0.027
            },
            Conduit.ALUMINIUM,
            new double[] {
                3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.20, 0.16, 0.13, 0.10, 0.082, 0.067, 0.057, 0.049, 0.043, 0.038,
                0.032
            },
            Conduit.STEEL,
            new double[] {
                3.1, 2.0, 1.2, 0.78, 0.49, 0.31, 0.25, 0.20, 0.16, 0.12, 0.10, 0.079, 0.063, 0.054, 0.045, 0.039, 0.035,
                0.029
            });

    private static final double[] AMERICAN_REACTANCE = {
        0.058, 0.054, 0.050, 0.052, 0.051, 0.048, 0.047, 0.045, 0.046, 0.044, 0.043, 0.042, 0.041, 0.041, 0.041, 0.040,
        0.040, 0.039
    };

    private static final double[] AMERICAN_REACTANCE_IN_STEEL = {
        0.073, 0.068, 0.063, 0.065, 0.064, 0.060, 0.059, 0.057, 0.057, 0.055, 0.054, 0.052, 0.051, 0.052, 0.051, 0.050,
        0.049, 0.048
    };

    /** Ω per km at 20 °C, by {@link ConductorSize#METRIC}. */
    private static final double[] METRIC_RESISTANCE = {
        12.1, 7.41, 4.61, 3.08, 1.83, 1.15, 0.727, 0.524, 0.387, 0.268, 0.193, 0.153, 0.124, 0.0991, 0.0754
    };

    private ConductorImpedance() {}

    /** Of one line conductor over the cable's length, its parallel sets together. */
    public static Impedance of(Cable cable, ConductorSize size, double conductorCelsius) {
        double sets = cable.sets();
        double kilometres = cable.lengthMetres() / 1000;
        return perKilometre(size, cable.material(), cable.conduit(), conductorCelsius)
                .times(kilometres / sets);
    }

    /**
     * Of one conductor, in Ω per km.
     *
     * @param conductorCelsius that it works at; American copper is tabulated at 75 °C and kept there
     */
    public static Impedance perKilometre(
            ConductorSize size, ConductorMaterial material, Conduit conduit, double conductorCelsius) {
        double reactance = size.isMetric() ? METRIC_REACTANCE_OHMS_PER_KM : americanReactance(size, conduit);
        if (material == ConductorMaterial.ALUMINIUM) {
            double resistivity = ALUMINIUM_RESISTIVITY * (1 + ALUMINIUM_RISE * (conductorCelsius - 20));
            return new Impedance(STRANDING * 1000 * resistivity / size.squareMillimetres(), reactance);
        }
        double resistance = size.isMetric()
                ? METRIC_RESISTANCE[size.index()] * (1 + COPPER_RISE * (conductorCelsius - 20))
                : perKilometre(AMERICAN_RESISTANCE.get(conduit)[size.index()]);
        return new Impedance(resistance, reactance);
    }

    private static double americanReactance(ConductorSize size, Conduit conduit) {
        double[] table = conduit == Conduit.STEEL ? AMERICAN_REACTANCE_IN_STEEL : AMERICAN_REACTANCE;
        return perKilometre(table[size.index()]);
    }

    private static double perKilometre(double perKilofoot) {
        return perKilofoot * 1000 / METRES_PER_KILOFOOT;
    }
}
