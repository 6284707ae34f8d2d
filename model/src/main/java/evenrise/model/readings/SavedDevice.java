package evenrise.model.readings;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** A residual-current device as tested. Currents are in milliampere, as such devices and their testers state them. */
@FileRecord
public record SavedDevice(
        @Field(meaning = "Its panel, with slots where it protects a branch", atLeast = 1)
        String place,

        @Field(meaning = "Load or panel behind it", byDefault = "\"\"")
        String protects,

        @Field(meaning = "Rated residual current, in milliampere", min = 0, max = 1_000_000, optional = true)
        OptionalDouble ratedMa,

        @Field(
                meaning = "Leakage behind it with everything on, in milliampere",
                min = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble leakageMa,

        @Field(meaning = "Current that it tripped at, in milliampere", min = 0, max = 1_000_000, optional = true)
        OptionalDouble trippedAtMa,

        @Field(meaning = "Time that it tripped after", min = 0, max = 1_000_000, optional = true)
        OptionalDouble trippedAfterMillis,

        @Field(meaning = "Whether it passed", optional = true)
        Optional<Boolean> passed)
        implements SavedDeviceBuilder.With {
    public SavedDevice {
        Contract.check(SavedDevice.class, place, protects, ratedMa, leakageMa, trippedAtMa, trippedAfterMillis, passed);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SavedDeviceBuilder builder() {
        return Defaults.into(SavedDeviceBuilder.unset(), SavedDevice.class);
    }
}
