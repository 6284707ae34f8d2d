package evenrise.model.contract;

import java.math.BigDecimal;
import java.util.Locale;

/** Numbers in words for people, the same on every machine. */
public final class Decimals {
    private static final int MOST_DECIMALS = 9;
    private static final double BILLION = 1e9;
    /** Whole numbers below it are doubles, each. */
    private static final double MOST_EXACT = 1L << 53;

    /** What differs by less than this, relatively, is the same number but for the last bits of a machine. */
    private static final double SAME = 1e-9;

    private Decimals() {}

    /** To a thousandth, without zeros at the end and without a minus before a zero. */
    public static String toThousandths(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(String.format(Locale.ROOT, "%.3f", value));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /**
     * A figure to print beside another: with {@code least} decimals, or as many more as it takes to tell the two apart. The
     * same call with the two exchanged gives the other one with as many decimals.
     */
    public static String apart(double figure, double other, int least) {
        return fixed(figure, decimals(figure, other, least));
    }

    /** The same to a thousandth at first, without zeros at the end. */
    public static String toThousandths(double value, double other) {
        int decimals = decimals(value, other, 3);
        return decimals == 3 ? toThousandths(value) : fixed(value, decimals);
    }

    private static int decimals(double figure, double other, int least) {
        boolean isSame = Math.abs(figure - other) <= SAME * Math.max(Math.abs(figure), Math.abs(other));
        int decimals = least;
        while (!isSame && decimals < MOST_DECIMALS && fixed(figure, decimals).equals(fixed(other, decimals))) {
            decimals++;
        }
        return decimals;
    }

    /** The nearest whole number, of two the even one: {@link Math#rint}, which a page's compiler takes for another. */
    public static double whole(double value) {
        double below = Math.floor(value);
        double rest = value - below;
        return rest > 0.5 || rest == 0.5 && below % 2 != 0 ? below + 1 : below;
    }

    /** For a table of values: to a billionth, so that remainders of binary arithmetic do not show. */
    public static String value(double value) {
        double billionths = value * BILLION;
        boolean isExact = Math.abs(billionths) < MOST_EXACT;
        // The sum turns a minus before a zero.
        return Double.toString(isExact ? whole(billionths) / BILLION + 0.0 : value);
    }

    /** With so many decimals, and without a minus before a zero. */
    public static String fixed(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.startsWith("-0") && text.matches("-0(\\.0*)?") ? text.substring(1) : text;
    }
}
