package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** The sag, and the swell, that a load rides through when it is on. */
@FileRecord
public record RideThrough(
        @Field(meaning = "Voltage that it needs, of the nominal one", min = 0, max = 100)
        double remainingPercent,

        @Field(meaning = "Time for which it does without", min = 0, max = 600_000, byDefault = "0")
        double withoutMillis,

        @Field(
                meaning = "Greatest rms voltage that it stands, of the nominal one; not judged when absent",
                min = 100,
                max = 1000,
                optional = true)
        OptionalDouble mostPercent)
        implements RideThroughBuilder.With {
    public RideThrough {
        Contract.check(RideThrough.class, remainingPercent, withoutMillis, mostPercent);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static RideThroughBuilder builder() {
        return Defaults.into(RideThroughBuilder.unset(), RideThrough.class);
    }
}
