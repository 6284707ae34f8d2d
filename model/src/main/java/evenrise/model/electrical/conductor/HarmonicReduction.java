package evenrise.model.electrical.conductor;

import evenrise.model.electrical.TriplenNeutral;

/**
 * Reduction of a four- or five-core cable's capacity for the third harmonic of balanced loads: IEC 60364-5-52 annex E table
 * E.52.1, read in two secondary copies. The values 15, 33 and 45 % belong to the lower band.
 *
 * @param factor on the cable's capacity
 * @param governingAmps the line's or the neutral's current, whichever the cable is sized for
 * @param isByNeutral whether it is the neutral's
 */
public record HarmonicReduction(double factor, double governingAmps, boolean isByNeutral) {

    /**
     * @param lineAmps design line current
     * @param thirdPercent third harmonic, of the design line current
     */
    public static HarmonicReduction of(double lineAmps, double thirdPercent) {
        if (thirdPercent <= 15) {
            return new HarmonicReduction(1, lineAmps, false);
        }
        if (thirdPercent <= 33) {
            return new HarmonicReduction(0.86, lineAmps, false);
        }
        double neutral = lineAmps * TriplenNeutral.ratioByLineCurrent(thirdPercent / 100);
        return new HarmonicReduction(thirdPercent <= 45 ? 0.86 : 1, neutral, true);
    }

    /** What the cable must be tabulated for. */
    public double neededAmps() {
        return governingAmps / factor;
    }
}
