package evenrise.model.electrical.breaker;

import evenrise.model.project.TripCurve;

/**
 * Currents between which a breaker may or may not trip at once, rms, as multiples of its rating.
 *
 * @param leastRatio at or below which it holds for 0.1 s
 * @param mostRatio above which it trips within 0.1 s
 */
public record InstantaneousBand(double leastRatio, double mostRatio) {
    /** Bands of IEC 60898-1, read on a page that cites it. Some makers print 14 or 15 as the upper end of D. */
    public static InstantaneousBand of(TripCurve curve) {
        return switch (curve) {
            case B -> new InstantaneousBand(3, 5);
            case C -> new InstantaneousBand(5, 10);
            case D -> new InstantaneousBand(10, 20);
        };
    }

    /** An adjustable trip, with the field tolerance of NEMA AB 4: 30 % below to 40 % above its setting (from memory). */
    public static InstantaneousBand adjustable(double settingRatio) {
        return new InstantaneousBand(0.7 * settingRatio, 1.4 * settingRatio);
    }
}
