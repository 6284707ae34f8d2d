package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** Rms currents between which a device may or may not trip at once, over its rating, by its maker. */
@FileRecord
public record InstantaneousRange(
        @Field(meaning = "Up to this it holds", above = 0, max = 1000)
        double low,

        @Field(meaning = "From this it trips at once; at least low", above = 0, max = 1000)
        double high)
        implements InstantaneousRangeBuilder.With {
    public InstantaneousRange {
        Contract.check(InstantaneousRange.class, low, high);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static InstantaneousRangeBuilder builder() {
        return Defaults.into(InstantaneousRangeBuilder.unset(), InstantaneousRange.class);
    }
}
