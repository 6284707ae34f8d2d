package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import java.util.OptionalDouble;

/** Numbers as they stand on a screen: a point for decimals whatever the country, no minus before a zero. */
public final class Numbers {
    /** Stands where there is no figure. */
    public static final String NONE = "-";

    private Numbers() {}

    /** Ampere, to a tenth. */
    public static String amps(double amps) {
        return fixed(amps, 1);
    }

    public static String amps(OptionalDouble amps) {
        return amps.isPresent() ? amps(amps.getAsDouble()) : NONE;
    }

    /** Percent, to a hundredth. */
    public static String percent(double percent) {
        return fixed(percent, 2);
    }

    /** Seconds, to a millisecond, without idle zeros beyond a tenth. */
    public static String seconds(double seconds) {
        String text = fixed(seconds, 3);
        return text.endsWith("00") ? text.substring(0, text.length() - 2) : text.replaceAll("0$", "");
    }

    public static String seconds(OptionalDouble seconds) {
        return seconds.isPresent() ? seconds(seconds.getAsDouble()) : NONE;
    }

    /** A count in three or four figures with thousand or million: {@code 1.23 million}. */
    public static String count(long count) {
        if (count < 10_000) {
            return Long.toString(count);
        }
        return count < 1_000_000 ? fixed(count / 1e3, 1) + " thousand" : fixed(count / 1e6, 2) + " million";
    }

    static String fixed(double number, int decimals) {
        return Double.isFinite(number) ? Decimals.fixed(number, decimals) : NONE;
    }
}
