package evenrise.model.measured;

import evenrise.model.measured.Discrepancy.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Residual-current devices as tested. */
final class DeviceTests {
    /** Of the rated residual current (IEC 60364-5-53 clause 531.3.2, from memory). */
    static final double MOST_LEAKAGE = 0.3;

    /** At the rated residual current, general type (IEC 61008-1 table 1, from memory). */
    static final double MOST_MILLIS = 300;

    private DeviceTests() {}

    static List<Discrepancy> of(SiteReadings readings) {
        List<Discrepancy> found = new ArrayList<>();
        for (DeviceReading each : readings.devices()) {
            each.ratedMilliamps().ifPresent(rated -> {
                if (each.leakageMilliamps().orElse(0) > MOST_LEAKAGE * rated) {
                    found.add(of(
                            Weight.DIFFERS,
                            each,
                            MeasuredQuantity.LEAKAGE,
                            OptionalDouble.of(MOST_LEAKAGE * rated),
                            each.leakageMilliamps(),
                            "more than 30 % of its rating: it may trip without a fault",
                            "which gear leaks; spread it over more devices"));
                }
                if (each.trippedAtMilliamps().orElse(0) > rated) {
                    found.add(of(
                            Weight.UNSAFE,
                            each,
                            MeasuredQuantity.TRIP_CURRENT,
                            OptionalDouble.of(rated),
                            each.trippedAtMilliamps(),
                            "it trips above its rated residual current",
                            "the device; exchange it before use"));
                }
            });
            if (each.trippedAfterMillis().orElse(0) > MOST_MILLIS) {
                found.add(of(
                        Weight.UNSAFE,
                        each,
                        MeasuredQuantity.TRIP_TIME,
                        OptionalDouble.of(MOST_MILLIS),
                        each.trippedAfterMillis(),
                        "slower than 300 ms (IEC 61008-1, general type, from memory)",
                        "whether it is of a delayed type; else exchange it before use"));
            }
            each.passed()
                    .filter(passed -> !passed)
                    .ifPresent(failed -> found.add(of(
                            Weight.UNSAFE,
                            each,
                            MeasuredQuantity.RESULT,
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            "the sheet says that it failed",
                            "what the sheet says of it")));
        }
        return found;
    }

    private static Discrepancy of(
            Weight weight,
            DeviceReading device,
            MeasuredQuantity quantity,
            OptionalDouble limit,
            OptionalDouble measured,
            String cause,
            String lookAt) {
        return new Discrepancy(
                weight,
                device.place() + (device.protects().isEmpty() ? "" : " " + device.protects()),
                Optional.empty(),
                quantity,
                limit,
                measured,
                0,
                cause,
                lookAt,
                new Visit(Optional.empty(), Meter.usual(""), device.at()));
    }
}
