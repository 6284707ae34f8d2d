package evenrise.model.readings;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;
import java.util.OptionalDouble;

/** One phase of a panel, a node or the supply as read at one visit. */
@FileRecord
public record SavedPhase(
        @Field(meaning = "The phase") Phase phase,

        @Field(meaning = "Voltage to neutral, rms", min = 0, max = 1000, optional = true)
        OptionalDouble toNeutralVolts,

        @Field(meaning = "Idle current, rms", min = 0, max = 100_000, optional = true)
        OptionalDouble idleAmps,

        @Field(meaning = "Current in use, rms", min = 0, max = 100_000, optional = true)
        OptionalDouble runningAmps,

        @Field(meaning = "Peak while the sequence runs, instantaneous", min = 0, max = 100_000, optional = true)
        OptionalDouble peakAmps)
        implements SavedPhaseBuilder.With {
    public SavedPhase {
        Contract.check(SavedPhase.class, phase, toNeutralVolts, idleAmps, runningAmps, peakAmps);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SavedPhaseBuilder builder() {
        return Defaults.into(SavedPhaseBuilder.unset(), SavedPhase.class);
    }
}
