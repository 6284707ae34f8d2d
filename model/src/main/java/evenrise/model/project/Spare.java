package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** Room that a panel is to leave. */
@FileRecord
public record Spare(
        @Field(meaning = "Free slots", min = 0, max = 1000, byDefault = "0")
        int slots,

        @Field(meaning = "Free slots for switched breakers", min = 0, max = 1000, byDefault = "0")
        int switchedSlots,

        @Field(meaning = "Poles of the further breakers", min = 1, max = 3, byDefault = "1")
        int poles,

        @Field(meaning = "Further breakers of so many poles that fit at once", min = 0, max = 1000, byDefault = "0")
        int fits,

        @Field(meaning = "Part of the allowed running current that is left", min = 0, max = 100, byDefault = "0")
        double runningPercent)
        implements SpareBuilder.With {
    public Spare {
        Contract.check(Spare.class, slots, switchedSlots, poles, fits, runningPercent);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SpareBuilder builder() {
        return Defaults.into(SpareBuilder.unset(), Spare.class);
    }
}
