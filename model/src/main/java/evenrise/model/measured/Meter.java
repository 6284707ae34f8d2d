package evenrise.model.measured;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What something was measured with, and how far that may be off. Errors are bounds, as meters state them.
 *
 * @param name by which readings call it
 * @param rangeAmps that it stood in
 * @param ofRangePercent its class, where it has one: of the range
 * @param ofReadingPercent of what it shows
 * @param leastAmps beside both
 * @param seconds how far times may be off
 * @param what make, type and serial number
 */
public record Meter(
        String name,
        OptionalDouble rangeAmps,
        double ofRangePercent,
        double ofReadingPercent,
        double leastAmps,
        double seconds,
        Optional<String> what,
        Optional<String> calibratedUntil) {
    /** What hands and a clock show (common practice, no source). */
    public static final double BY_HAND_SECONDS = 0.5;

    private static final double USUAL_PERCENT = 3;
    private static final double USUAL_LEAST_AMPS = 0.05;

    /** Of which nothing is known: common practice, no source. */
    public static Meter usual(String name) {
        return new Meter(
                name,
                OptionalDouble.empty(),
                0,
                USUAL_PERCENT,
                USUAL_LEAST_AMPS,
                BY_HAND_SECONDS,
                Optional.empty(),
                Optional.empty());
    }

    /** How far a reading may be off either way, in ampere. */
    public double errorAmps(double reading) {
        return leastAmps + ofRangePercent / 100 * rangeAmps.orElse(0) + ofReadingPercent / 100 * Math.abs(reading);
    }

    /** Whether a reading is in the uppermost or beyond the range, where nothing may be said of it. */
    public boolean isOverRange(double reading) {
        return rangeAmps.isPresent() && reading > rangeAmps.getAsDouble();
    }
}
