package evenrise.model.measured;

import java.util.OptionalDouble;

/**
 * What a reading may be, for whoever stands at the panel with a meter.
 *
 * @param floor below it something is unsafe
 * @param least below it, by more than the meter may be off, something is other than planned
 * @param most above it likewise
 * @param limit above it, or so near that the meter cannot rule it out, something is unsafe
 * @param error what the meter may be off by
 */
public record Allowed(
        OptionalDouble floor, OptionalDouble least, OptionalDouble most, OptionalDouble limit, Error error) {
    /** Which of a meter's errors counts. */
    public enum Error {
        NONE,
        CURRENT,
        TIME
    }

    static Allowed between(double least, double most, Error error) {
        return new Allowed(
                OptionalDouble.empty(),
                OptionalDouble.of(least),
                OptionalDouble.of(most),
                OptionalDouble.empty(),
                error);
    }

    static Allowed upTo(double most, OptionalDouble limit, Error error) {
        return new Allowed(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(most), limit, error);
    }

    static Allowed below(double limit, Error error) {
        return new Allowed(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(limit),
                error);
    }

    static Allowed from(double floor) {
        return new Allowed(
                OptionalDouble.of(floor),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Error.NONE);
    }
}
