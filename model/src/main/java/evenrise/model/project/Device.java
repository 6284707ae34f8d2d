package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** A breaker ahead of others: of a feeder, or the main of a panel or of the supply. One device with a common trip. */
@FileRecord
public record Device(
        @Field(
                meaning = "Its rating; when absent the feeder's breaker_a, else rated_a of the panel or supply",
                above = 0,
                max = 100_000,
                optional = true)
        OptionalDouble ratedAmps,

        @Field(meaning = "Instantaneous trip band, by IEC 60898-1", optional = true)
        Optional<TripCurve> curve,

        @Field(
                meaning = "Range of its instantaneous trip by its maker; it goes before the curve. Nothing stated: not "
                        + "checked",
                optional = true)
        Optional<InstantaneousRange> instantaneous)
        implements DeviceBuilder.With {
    public Device {
        Contract.check(Device.class, ratedAmps, curve, instantaneous);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static DeviceBuilder builder() {
        return Defaults.into(DeviceBuilder.unset(), Device.class);
    }
}
