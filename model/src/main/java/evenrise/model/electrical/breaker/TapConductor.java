package evenrise.model.electrical.breaker;

/** Conductors without a device where they begin, by NEC 240.21(B)(1) and (2): read in one article, the first from memory. */
public final class TapConductor {
    /** 10 feet. */
    public static final double SHORT_METRES = 10 * 0.3048;

    /** 25 feet. */
    public static final double LONG_METRES = 25 * 0.3048;

    private TapConductor() {}

    /**
     * Least ampacity beside that of the device that they end in: a tenth of the device before them up to 10 feet, a third up
     * to 25. Longer ones are for other paragraphs.
     */
    public static double leastAmps(double deviceAmps, double metres) {
        return deviceAmps / (isShort(metres) ? 10 : 3);
    }

    public static boolean isShort(double metres) {
        return metres <= SHORT_METRES;
    }
}
