package evenrise.model.electrical.conductor;

import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.ReferenceMethod;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a conductor may carry continuously, in ampere rms, before and after correction. Empty where no verified table stands
 * here: metric aluminium, metric insulation of 90 °C, method B1 above 120 mm² (sources disagree there).
 *
 * <p>American: NEC table 310.16, 30 °C, at most three current-carrying conductors; read in open-source code, of
 * which several copies agree; where editions differ by 5 A (600 kcmil copper, 700 kcmil aluminium) the lower. Metric: IEC 60364-5-52 tables B.52.2 and B.52.4, PVC 70 °C, copper, 30 °C,
 * read in several copies; for two loaded conductors by methods A1, A2 and B2 the lower row for three is taken.
 */
public final class Ampacity {
    private static final Map<Integer, double[]> AMERICAN_COPPER = Map.of(
            60,
            new double[] {
                15, 20, 30, 40, 55, 70, 85, 95, 110, 125, 145, 165, 195, 215, 240, 260, 280, 320, 350, 385, 400, 410,
                435, 455
            },
            75,
            new double[] {
                20, 25, 35, 50, 65, 85, 100, 115, 130, 150, 175, 200, 230, 255, 285, 310, 335, 380, 420, 460, 475, 490,
                520, 545
            },
            90,
            new double[] {
                25, 30, 40, 55, 75, 95, 115, 130, 145, 170, 195, 225, 260, 290, 320, 350, 380, 430, 475, 520, 535, 555,
                585, 615
            });

    /** 14 AWG is not listed in aluminium. */
    private static final Map<Integer, double[]> AMERICAN_ALUMINIUM = Map.of(
            60,
            new double[] {
                0, 15, 25, 35, 40, 55, 65, 75, 85, 100, 115, 130, 150, 170, 195, 210, 225, 260, 285, 310, 320, 330, 355,
                375
            },
            75,
            new double[] {
                0, 20, 30, 40, 50, 65, 75, 90, 100, 120, 135, 155, 180, 205, 230, 250, 270, 310, 340, 375, 385, 395,
                425, 445
            },
            90,
            new double[] {
                0, 25, 35, 45, 55, 75, 85, 100, 115, 135, 150, 175, 205, 230, 260, 280, 305, 350, 385, 420, 435, 445,
                480, 500
            });

    private static final Map<ReferenceMethod, double[]> METRIC_THREE_LOADED = Map.of(
            ReferenceMethod.A1,
            new double[] {13.5, 18, 24, 31, 42, 56, 73, 89, 108, 136, 164, 188, 216, 245, 286},
            ReferenceMethod.A2,
            new double[] {13, 17.5, 23, 29, 39, 52, 68, 83, 99, 125, 150, 172, 196, 223, 261},
            ReferenceMethod.B1,
            new double[] {15.5, 21, 28, 36, 50, 68, 89, 110, 134, 171, 207, 239},
            ReferenceMethod.B2,
            new double[] {15, 20, 27, 34, 46, 62, 80, 99, 118, 149, 179, 206, 225, 255, 297},
            ReferenceMethod.C,
            new double[] {17.5, 24, 32, 41, 57, 76, 96, 119, 144, 184, 223, 259, 299, 341, 403});

    private static final Map<ReferenceMethod, double[]> METRIC_TWO_LOADED = Map.of(
            ReferenceMethod.B1,
            new double[] {17.5, 24, 32, 41, 57, 76, 101, 125, 151, 192, 232, 269},
            ReferenceMethod.C,
            new double[] {19.5, 27, 36, 46, 63, 85, 112, 138, 168, 213, 258, 299, 344, 392, 461});

    /** The tables of correction begin here (from memory); cooler air is given no more. */
    private static final double COOLEST_CELSIUS = 10;

    private Ampacity() {}

    /** @param celsius column of the table: 60, 75 or 90 */
    public static OptionalDouble american(ConductorSize size, ConductorMaterial material, double celsius) {
        Map<Integer, double[]> table = material == ConductorMaterial.COPPER ? AMERICAN_COPPER : AMERICAN_ALUMINIUM;
        double[] column = celsius == Math.rint(celsius) ? table.get((int) celsius) : null;
        return column == null || column[size.index()] == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(column[size.index()]);
    }

    /** @param loaded conductors that carry current: 2 or 3 */
    public static OptionalDouble metric(
            ConductorSize size, ConductorMaterial material, ReferenceMethod method, int loaded) {
        double[] three = METRIC_THREE_LOADED.get(method);
        double[] row = loaded == 2 ? METRIC_TWO_LOADED.getOrDefault(method, three) : three;
        return material != ConductorMaterial.COPPER || size.index() >= row.length
                ? OptionalDouble.empty()
                : OptionalDouble.of(row[size.index()]);
    }

    /**
     * Correction for air that is warmer or cooler than 30 °C: √((T − ambient)/(T − 30)) for a conductor at T, to two
     * decimals, as both codes' tables print it. American tables go in steps of 5 °C, of which the upper end counts.
     */
    public static double ambientFactor(double conductorCelsius, double ambientCelsius, boolean inSteps) {
        double ambient = Math.max(COOLEST_CELSIUS, inSteps ? 5 * Math.ceil(ambientCelsius / 5) : ambientCelsius);
        double squared = (conductorCelsius - ambient) / (conductorCelsius - 30);
        return squared <= 0 ? 0 : Math.round(100 * Math.sqrt(squared)) / 100.0;
    }

    /** NEC table 310.15(C)(1): 4–6 80 %, 7–9 70 %, 10–20 50 %, 21–30 45 %, 31–40 40 %, more 35 % (read on three pages). */
    public static double americanGroupFactor(int currentCarrying) {
        if (currentCarrying <= 3) {
            return 1;
        } else if (currentCarrying <= 6) {
            return 0.8;
        } else if (currentCarrying <= 9) {
            return 0.7;
        } else if (currentCarrying <= 20) {
            return 0.5;
        } else if (currentCarrying <= 30) {
            return 0.45;
        }
        return currentCarrying <= 40 ? 0.4 : 0.35;
    }

    /** IEC 60364-5-52 table B.52.17, bunched in air, on a surface or enclosed (from memory). */
    public static double metricGroupFactor(int circuits) {
        double[] factors = {1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5};
        if (circuits <= factors.length) {
            return factors[circuits - 1];
        }
        return circuits <= 12 ? 0.45 : circuits <= 16 ? 0.41 : 0.38;
    }
}
