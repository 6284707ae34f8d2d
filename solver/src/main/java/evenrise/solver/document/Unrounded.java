package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import java.util.Locale;

/** Figures that somebody buys, sets or checks by: never rounded away from what the project states. */
public final class Unrounded {
    private Unrounded() {}

    /** {@code 6.3/2}: a rating in ampere over poles. */
    static String breaker(int poles, double ratedAmps) {
        return rated(ratedAmps) + "/" + poles;
    }

    /** A rating or a limit. */
    static String amps(double amps) {
        return rated(amps) + " A";
    }

    /** The same without its unit. */
    public static String rated(double value) {
        return Decimals.toThousandths(value);
    }

    /** To a hundredth, or to a thousandth where that would round it. */
    static String seconds(double seconds) {
        return String.format(Locale.ROOT, isInHundredths(seconds) ? "%.2f" : "%.3f", seconds);
    }

    /** Whether two decimals tell all of a number, to a thousandth. */
    public static boolean isInHundredths(double value) {
        return Math.abs(100 * value - Math.rint(100 * value)) < 0.05;
    }
}
