package evenrise.model.electrical.source;

import java.util.HashMap;
import java.util.Map;

/**
 * How a voltage that a step has moved comes back as inrush dies down. It is flat for the first half-cycle, over which its
 * depth is an rms.
 */
public final class DipCourse {
    /** From a 256th to 32 half-lives, two instants to a doubling. */
    private static final int FIRST = -16;

    private static final int LAST = 10;
    private static final int HALVINGS = 40;

    private final Departure departure;
    private final double flatSeconds;
    private final double halfLifeSeconds;
    private final Map<Double, Double> known = new HashMap<>();

    /** How far a voltage is from nominal once inrush has died down for so long; infinitely long leaves what stays. */
    @FunctionalInterface
    public interface Departure {
        double percentAfter(double seconds);

        /** The same as to ask for it, where that can be told with less. */
        default boolean isAboveAfter(double seconds, double percent) {
            return percentAfter(seconds) > percent;
        }
    }

    /**
     * @param flatSeconds half a period
     * @param halfLifeSeconds the longest of the inrushes'
     */
    public DipCourse(Departure departure, double flatSeconds, double halfLifeSeconds) {
        this.departure = departure;
        this.flatSeconds = flatSeconds;
        this.halfLifeSeconds = halfLifeSeconds;
    }

    public double percentAfter(double seconds) {
        return known.computeIfAbsent(dying(seconds), departure::percentAfter);
    }

    private double dying(double seconds) {
        return Math.max(0, seconds - flatSeconds);
    }

    private boolean isAbove(double seconds, double percent) {
        Double so = known.get(dying(seconds));
        return so == null ? departure.isAboveAfter(dying(seconds), percent) : so > percent;
    }

    /**
     * How long until it is back within {@code percent} for good: 0 where it never leaves it, infinite where it stays beyond.
     * What happens between two of the instants that are looked at counts as outside until the later one.
     */
    public double secondsAbove(double percent) {
        if (isAbove(Double.POSITIVE_INFINITY, percent)) {
            return Double.POSITIVE_INFINITY;
        }
        double below = instant(LAST);
        for (int k = LAST - 1; k >= FIRST; k--) {
            if (isAbove(instant(k), percent)) {
                return between(instant(k), below, percent, Double.NaN);
            }
            below = instant(k);
        }
        return isAbove(0, percent) ? between(0, below, percent, Double.NaN) : 0;
    }

    /** Whether {@link #secondsAbove} is more than {@code seconds}, 0 or more: known long before how much more it is. */
    public boolean isAboveFor(double seconds, double percent) {
        if (isAbove(Double.POSITIVE_INFINITY, percent)) {
            return true;
        }
        int later = FIRST;
        while (later < LAST && instant(later) < seconds) {
            later++;
        }
        // The voltage is most likely to be still away where little time has passed.
        for (int k = later; k < LAST; k++) {
            if (isAbove(instant(k), percent)) {
                return true;
            }
        }
        double from = later == FIRST ? 0 : instant(later - 1);
        return instant(later) > seconds
                && isAbove(from, percent)
                && between(from, instant(later), percent, seconds) > seconds;
    }

    /** @param wanted time whose side alone matters; not a number where the time itself does */
    private double between(double from, double to, double percent, double wanted) {
        double above = from;
        double below = to;
        for (int i = 0; i < HALVINGS && below - above > 1e-6 && !(above >= wanted) && !(below <= wanted); i++) {
            double middle = (above + below) / 2;
            if (isAbove(middle, percent)) {
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
