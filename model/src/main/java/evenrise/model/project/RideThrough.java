package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** The sag that a load rides through when it is on. */
@FileRecord
public record RideThrough(
        @Field(meaning = "Voltage that it needs, of the nominal one", min = 0, max = 100)
        double remainingPercent,

        @Field(meaning = "Time for which it does without", min = 0, max = 600_000, byDefault = "0")
        double withoutMillis)
        implements RideThroughBuilder.With {
    public RideThrough {
        Contract.check(RideThrough.class, remainingPercent, withoutMillis);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static RideThroughBuilder builder() {
        return Defaults.into(RideThroughBuilder.unset(), RideThrough.class);
    }
}
