package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;

/** What was measured of a load, beside what its field said before. */
@FileRecord
public record MeasuredValue(
        @Field(
                meaning = "Field of the load that it is about: idle_a, running_a, inrush_peak_a or inrush_half_ms",
                atLeast = 1)
        String field,

        @Field(meaning = "Greatest reading over poles, in the field's unit", min = 0, max = 1_000_000)
        double value,

        @Field(meaning = "How far that may be off either way, in the field's unit", min = 0, max = 1_000_000)
        double spread,

        @Field(meaning = "Day on which it was read, as ISO 8601 has it", optional = true)
        Optional<String> date,

        @Field(meaning = "What it was read with", optional = true)
        Optional<String> meter,

        @Field(meaning = "What the field said before", min = 0, max = 1_000_000)
        double stated,

        @Field(meaning = "Whether that was guessed", byDefault = "false")
        boolean guessed,

        @Field(meaning = "Whether somebody confirmed that it was read at full use", byDefault = "false")
        boolean fullUse,

        @Field(meaning = "Whether the field now holds the reading with its spread", byDefault = "false")
        boolean taken)
        implements MeasuredValueBuilder.With {
    public static final String IDLE = "idle_a";
    public static final String RUNNING = "running_a";
    public static final String PEAK = "inrush_peak_a";
    public static final String HALF = "inrush_half_ms";

    public MeasuredValue {
        Contract.check(MeasuredValue.class, field, value, spread, date, meter, stated, guessed, fullUse, taken);
    }

    /** The reading with all that it may be off by on top: what bounds go by. */
    public double upper() {
        return value + spread;
    }

    /** Begins with what a file gives that leaves everything out. */
    public static MeasuredValueBuilder builder() {
        return Defaults.into(MeasuredValueBuilder.unset(), MeasuredValue.class);
    }
}
