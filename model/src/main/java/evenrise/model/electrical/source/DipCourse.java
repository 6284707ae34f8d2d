package evenrise.model.electrical.source;

import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * How a voltage that a step has moved comes back as inrush dies down. It is flat for the first half-cycle, over which its
 * depth is an rms.
 */
public final class DipCourse {
    /** From a 256th to 32 half-lives, two instants to a doubling. */
    private static final int FIRST = -16;

    private static final int LAST = 10;
    private static final int HALVINGS = 40;

    private final DoubleUnaryOperator percentOf;
    private final double flatSeconds;
    private final double halfLifeSeconds;
    private final Map<Double, Double> known = new HashMap<>();

    /**
     * @param percentOf departure from nominal, by the seconds for which inrush has died down; infinite ones leave what stays
     * @param flatSeconds half a period
     * @param halfLifeSeconds the longest of the inrushes'
     */
    public DipCourse(DoubleUnaryOperator percentOf, double flatSeconds, double halfLifeSeconds) {
        this.percentOf = percentOf;
        this.flatSeconds = flatSeconds;
        this.halfLifeSeconds = halfLifeSeconds;
    }

    public double percentAfter(double seconds) {
        double dying = Math.max(0, seconds - flatSeconds);
        return known.computeIfAbsent(dying, percentOf::applyAsDouble);
    }

    /**
     * How long until it is back within {@code percent} for good: 0 where it never leaves it, infinite where it stays beyond.
     * What happens between two of the instants that are looked at counts as outside until the later one.
     */
    public double secondsAbove(double percent) {
        if (percentAfter(Double.POSITIVE_INFINITY) > percent) {
            return Double.POSITIVE_INFINITY;
        }
        double below = instant(LAST);
        for (int k = LAST - 1; k >= FIRST; k--) {
            if (percentAfter(instant(k)) > percent) {
                return between(instant(k), below, percent);
            }
            below = instant(k);
        }
        return percentAfter(0) > percent ? between(0, below, percent) : 0;
    }

    private double between(double from, double to, double percent) {
        double above = from;
        double below = to;
        for (int i = 0; i < HALVINGS && below - above > 1e-6; i++) {
            double middle = (above + below) / 2;
            if (percentAfter(middle) > percent) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return below;
    }

    private double instant(int k) {
        return flatSeconds + halfLifeSeconds * Math.pow(2, k / 2.0);
    }
}
