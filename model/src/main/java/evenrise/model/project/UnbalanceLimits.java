package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** What the project allows of unequal line currents, as phasors of the fundamental, at the supply and at each panel. */
@FileRecord
public record UnbalanceLimits(
        @Field(
                meaning = "Greatest deviation of a line current's magnitude from the mean of the lines, of that mean",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble imbalancePercent,

        @Field(
                meaning = "Greatest negative sequence, of the positive one; on three phases",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble negativeSequencePercent,

        @Field(
                meaning = "Greatest zero sequence, of the positive one; on three phases",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble zeroSequencePercent)
        implements UnbalanceLimitsBuilder.With {
    public UnbalanceLimits {
        Contract.check(UnbalanceLimits.class, imbalancePercent, negativeSequencePercent, zeroSequencePercent);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static UnbalanceLimitsBuilder builder() {
        return Defaults.into(UnbalanceLimitsBuilder.unset(), UnbalanceLimits.class);
    }
}
