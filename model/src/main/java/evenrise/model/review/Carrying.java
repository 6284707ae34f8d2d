package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Decimals;
import java.util.OptionalDouble;

/**
 * What a run may carry, with the arithmetic that leads there: column × correction × adjustment × sets, and no more than the
 * terminals' own column, which is not corrected.
 *
 * @param columnAmps of one conductor, by the table
 * @param terminalAmps that the terminals allow, its sets together; empty where the table has no such column
 */
record Carrying(
        double columnAmps,
        String column,
        double ambientFactor,
        String ambient,
        double groupFactor,
        String group,
        int sets,
        OptionalDouble terminalAmps,
        String terminals) {

    double correctedAmps() {
        return columnAmps * ambientFactor * groupFactor * sets;
    }

    double amps() {
        return Math.min(correctedAmps(), terminalAmps.orElse(Double.POSITIVE_INFINITY));
    }

    /** {@code 40 A (90 °C column) × 0.91 (air of 40 °C) × 0.8 (6 conductors together) = 29.12 A}. */
    String text() {
        String product = Decimals.toThousandths(columnAmps) + " A (" + column + ")"
                + factor(ambientFactor, ambient)
                + factor(groupFactor, group)
                + (sets == 1 ? "" : " × " + sets + " sets");
        boolean isCorrected = ambientFactor != 1 || groupFactor != 1 || sets != 1;
        String text = isCorrected ? product + " = " + HUNDREDTHS.amps(correctedAmps()) : product;
        return amps() < correctedAmps()
                ? text + "; the terminals allow " + HUNDREDTHS.amps(amps()) + " (" + terminals + ")"
                : text;
    }

    private static String factor(double factor, String why) {
        return factor == 1 ? "" : " × " + Decimals.toThousandths(factor) + " (" + why + ")";
    }
}
