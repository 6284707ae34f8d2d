package evenrise.model.contract;

import java.math.BigDecimal;
import java.util.Locale;

/** Numbers in words for people, the same on every machine. */
public final class Decimals {
    private Decimals() {}

    /** To a thousandth, without zeros at the end and without a minus before a zero. */
    public static String toThousandths(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(String.format(Locale.ROOT, "%.3f", value));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
