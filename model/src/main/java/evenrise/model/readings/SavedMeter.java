package evenrise.model.readings;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** What something was read with, and how far it may be off. */
@FileRecord
public record SavedMeter(
        @Field(meaning = "What readings call it", atLeast = 1)
        String meter,

        @Field(meaning = "Make, type and serial number", optional = true)
        Optional<String> what,

        @Field(meaning = "Until when it is calibrated", optional = true)
        Optional<String> calibratedUntil,

        @Field(meaning = "Range that it stood in", above = 0, max = 1_000_000, optional = true)
        OptionalDouble rangeAmps,

        @Field(meaning = "How far it may be off, of its range", min = 0, max = 100, optional = true)
        OptionalDouble ofRangePercent,

        @Field(meaning = "How far it may be off, of what it shows", min = 0, max = 100, optional = true)
        OptionalDouble ofReadingPercent,

        @Field(meaning = "How far times may be off", min = 0, max = 3600, optional = true)
        OptionalDouble offBySeconds)
        implements SavedMeterBuilder.With {
    public SavedMeter {
        Contract.check(
                SavedMeter.class,
                meter,
                what,
                calibratedUntil,
                rangeAmps,
                ofRangePercent,
                ofReadingPercent,
                offBySeconds);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SavedMeterBuilder builder() {
        return Defaults.into(SavedMeterBuilder.unset(), SavedMeter.class);
    }
}
