package evenrise.model.measured;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was read of a residual-current device.
 *
 * @param place where it sits
 * @param protects what is behind it
 * @param ratedMilliamps its rated residual current
 * @param leakageMilliamps in the protective conductors behind it, with everything on
 * @param trippedAtMilliamps at a rising current
 * @param trippedAfterMillis at its rated current
 */
public record DeviceReading(
        String place,
        String protects,
        OptionalDouble ratedMilliamps,
        OptionalDouble leakageMilliamps,
        OptionalDouble trippedAtMilliamps,
        OptionalDouble trippedAfterMillis,
        Optional<Boolean> passed,
        String at) {}
