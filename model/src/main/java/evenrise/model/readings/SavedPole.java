package evenrise.model.readings;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;
import java.util.Optional;
import java.util.OptionalDouble;

/** One pole of a load as read at one visit. */
@FileRecord
public record SavedPole(
        @Field(meaning = "The load", atLeast = 1) String load,

        @Field(meaning = "Phase that was read", optional = true)
        Optional<Phase> phase,

        @Field(meaning = "Idle current, rms", min = 0, max = 6300, optional = true)
        OptionalDouble idleAmps,

        @Field(meaning = "Current in use, rms", min = 0, max = 6300, optional = true)
        OptionalDouble runningAmps,

        @Field(meaning = "Peak at switch-on, instantaneous", min = 0, max = 1_000_000, optional = true)
        OptionalDouble peakAmps,

        @Field(meaning = "When it came on, from the command to switch on", min = 0, max = 86_400, optional = true)
        OptionalDouble onSeconds,

        @Field(meaning = "When it went off, from the command to switch off", min = 0, max = 86_400, optional = true)
        OptionalDouble offSeconds,

        @Field(meaning = "Whether it passed", optional = true)
        Optional<Boolean> passed,

        @Field(meaning = "Whatever else is to be said of it", optional = true)
        Optional<String> remark,

        @Field(meaning = "Day on which it was read, as ISO 8601 has it", optional = true)
        Optional<String> date,

        @Field(meaning = "What it was read with", optional = true)
        Optional<String> meter)
        implements SavedPoleBuilder.With {
    public SavedPole {
        Contract.check(
                SavedPole.class,
                load,
                phase,
                idleAmps,
                runningAmps,
                peakAmps,
                onSeconds,
                offSeconds,
                passed,
                remark,
                date,
                meter);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SavedPoleBuilder builder() {
        return Defaults.into(SavedPoleBuilder.unset(), SavedPole.class);
    }
}
