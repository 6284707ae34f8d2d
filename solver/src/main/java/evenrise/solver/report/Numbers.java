package evenrise.solver.report;

import java.util.Locale;
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

    /** A count with its noun, in the plural where it is not one. */
    public static String counted(long count, String noun) {
        return count + " " + (count == 1 ? noun : noun + "s");
    }

    static String fixed(double number, int decimals) {
        if (!Double.isFinite(number)) {
            return NONE;
        }
        String text = String.format(Locale.ROOT, "%." + decimals + "f", number);
        return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
    }
}
