package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** Voltages that the supply may have for as long as anybody likes, where the loads are. */
@FileRecord
public record VoltageRange(
        @Field(meaning = "Least voltage, of the nominal one", above = 0, max = 100)
        double leastPercent,

        @Field(meaning = "Greatest voltage, of the nominal one", min = 100, max = 200)
        double mostPercent)
        implements VoltageRangeBuilder.With {
    public VoltageRange {
        Contract.check(VoltageRange.class, leastPercent, mostPercent);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static VoltageRangeBuilder builder() {
        return Defaults.into(VoltageRangeBuilder.unset(), VoltageRange.class);
    }
}
