package evenrise.model.event;

/** How far from its nominal time a breaker closes: where chance comes in, if any does. */
@FunctionalInterface
public interface ContactTiming {
    /** Every breaker closes on time. */
    ContactTiming NOMINAL = (load, closing) -> 0;

    /**
     * Seconds after the nominal time, negative for earlier.
     *
     * @param load id of the load
     * @param closing how often the load's breaker was told to close before
     */
    double offsetSeconds(String load, int closing);
}
