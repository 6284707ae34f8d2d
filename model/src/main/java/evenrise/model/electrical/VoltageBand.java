package evenrise.model.electrical;

/**
 * Voltages that a supply may have for as long as anybody likes, over the nominal one.
 *
 * @param leastRatio more than 0, at most 1
 * @param mostRatio at least 1
 */
public record VoltageBand(double leastRatio, double mostRatio) {
    /** The nominal voltage and no other. */
    public static final VoltageBand NOMINAL = new VoltageBand(1, 1);

    public VoltageBand {
        if (!(leastRatio > 0 && leastRatio <= 1 && mostRatio >= 1 && Double.isFinite(mostRatio))) {
            throw new IllegalArgumentException(
                    "voltages from " + leastRatio + " to " + mostRatio + " do not lie about the nominal one");
        }
    }

    /** What an inrush, in proportion to the voltage, grows by at most. */
    public double inrushRatio() {
        return mostRatio;
    }

    /**
     * What a steady current grows by at most: that of an impedance at the highest voltage, that of a constant power at the
     * lowest.
     */
    public double steadyRatio() {
        return Math.max(mostRatio, 1 / leastRatio);
    }

    /** The least band with all voltages of both. */
    public VoltageBand and(VoltageBand other) {
        return new VoltageBand(Math.min(leastRatio, other.leastRatio), Math.max(mostRatio, other.mostRatio));
    }
}
