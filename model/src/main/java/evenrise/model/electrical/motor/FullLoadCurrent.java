package evenrise.model.electrical.motor;

import java.util.OptionalDouble;

/**
 * Full-load current of an alternating-current motor by the tables that NEC 430.6(A)(1) sizes its circuit by: 430.248 (one
 * phase) and 430.250 (three phases, squirrel cage and wound rotor), read in three to five secondary copies that agree but
 * for misprints of one each. Between two rows it is interpolated, as 430.6(A)(1) says of motors that are marked in ampere
 * alone. Empty outside the rows, and at a voltage that has no column: neither 277 V nor 230/400 V has one.
 */
public final class FullLoadCurrent {
    private static final double NONE = Double.NaN;

    private static final double[] SINGLE_HORSEPOWER = {1 / 6.0, 0.25, 1 / 3.0, 0.5, 0.75, 1, 1.5, 2, 3, 5, 7.5, 10};

    /** Of 115, 200, 208 and 230 V; 200 V read in one copy. */
    private static final double[][] SINGLE_AMPS = {
        {4.4, 5.8, 7.2, 9.8, 13.8, 16, 20, 24, 34, 56, 80, 100},
        {2.5, 3.3, 4.1, 5.6, 7.9, 9.2, 11.5, 13.8, 19.6, 32.2, 46, 57.5},
        {2.4, 3.2, 4.0, 5.4, 7.6, 8.8, 11, 13.2, 18.7, 30.8, 44, 55},
        {2.2, 2.9, 3.6, 4.9, 6.9, 8.0, 10, 12, 17, 28, 40, 50}
    };

    private static final double[] THREE_HORSEPOWER = {
        0.5, 0.75, 1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200
    };

    /** Of 115, 200, 208, 230, 460 and 575 V. */
    private static final double[][] THREE_AMPS = {
        {4.4, 6.4, 8.4, 12, 13.6},
        {2.5, 3.7, 4.8, 6.9, 7.8, 11, 17.5, 25.3, 32.2, 48.3, 62.1, 78.2, 92, 120, 150, 177, 221, 285, 359, 414, 552},
        {2.4, 3.5, 4.6, 6.6, 7.5, 10.6, 16.7, 24.2, 30.8, 46.2, 59.4, 74.8, 88, 114, 143, 169, 211, 273, 343, 396, 528},
        {2.2, 3.2, 4.2, 6.0, 6.8, 9.6, 15.2, 22, 28, 42, 54, 68, 80, 104, 130, 154, 192, 248, 312, 360, 480},
        {1.1, 1.6, 2.1, 3.0, 3.4, 4.8, 7.6, 11, 14, 21, 27, 34, 40, 52, 65, 77, 96, 124, 156, 180, 240},
        {0.9, 1.3, 1.7, 2.4, 2.7, 3.9, 6.1, 9, 11, 17, 22, 27, 32, 41, 52, 62, 77, 99, 125, 144, 192}
    };

    private FullLoadCurrent() {}

    /** @param volts across the motor's two terminals */
    public static OptionalDouble singlePhaseAmps(double horsepower, double volts) {
        int column = column(volts);
        return column < 0 || column >= SINGLE_AMPS.length
                ? OptionalDouble.empty()
                : interpolated(SINGLE_HORSEPOWER, SINGLE_AMPS[column], horsepower);
    }

    /** @param volts between two lines */
    public static OptionalDouble threePhaseAmps(double horsepower, double volts) {
        int column = column(volts);
        return column < 0 ? OptionalDouble.empty() : interpolated(THREE_HORSEPOWER, THREE_AMPS[column], horsepower);
    }

    /** The tables' own ranges of system voltage; half a volt either side for what 120·√3 and its like come to. */
    private static int column(double volts) {
        if (volts >= 109.5 && volts <= 120.5) {
            return 0;
        } else if (volts >= 195 && volts < 204) {
            return 1;
        } else if (volts >= 204 && volts < 216) {
            return 2;
        } else if (volts >= 219.5 && volts <= 240.5) {
            return 3;
        } else if (volts >= 439.5 && volts <= 480.5) {
            return 4;
        }
        return volts >= 549.5 && volts <= 600.5 ? 5 : -1;
    }

    private static OptionalDouble interpolated(double[] rows, double[] amps, double horsepower) {
        double found = NONE;
        for (int i = 0; i < amps.length; i++) {
            if (Math.abs(horsepower - rows[i]) < 1e-3) {
                found = amps[i];
            } else if (i > 0 && horsepower > rows[i - 1] && horsepower < rows[i] && Double.isNaN(found)) {
                double part = (horsepower - rows[i - 1]) / (rows[i] - rows[i - 1]);
                found = amps[i - 1] + part * (amps[i] - amps[i - 1]);
            }
        }
        return Double.isNaN(found) ? OptionalDouble.empty() : OptionalDouble.of(found);
    }
}
