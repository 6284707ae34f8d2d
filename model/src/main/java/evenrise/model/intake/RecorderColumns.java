package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Which headers of one recorder's tables stand for what. */
@FileRecord
public record RecorderColumns(
        @Field(meaning = "Header of the time", atLeast = 1) String time,

        @Field(meaning = "Header of the current of phase A", atLeast = 1, optional = true)
        Optional<String> phaseA,

        @Field(meaning = "Header of the current of phase B", atLeast = 1, optional = true)
        Optional<String> phaseB,

        @Field(meaning = "Header of the current of phase C", atLeast = 1, optional = true)
        Optional<String> phaseC,

        @Field(
                meaning =
                        "Units of the time that are one second, where it is a plain number: 1000 for milliseconds; told"
                                + " by the header when absent",
                above = 0,
                max = 1e9,
                optional = true)
        OptionalDouble unitsPerSecond,

        @Field(
                meaning = "Amperes of one unit of the currents: 0.001 for milliamperes, 100 for a clamp of 10 mV/A in"
                        + " volts; told by the header when absent",
                above = 0,
                max = 1e6,
                optional = true)
        OptionalDouble ampsPerUnit)
        implements RecorderColumnsBuilder.With {
    public RecorderColumns {
        Contract.check(RecorderColumns.class, time, phaseA, phaseB, phaseC, unitsPerSecond, ampsPerUnit);
    }

    /** Headers of currents by phase. */
    public Map<Phase, String> phases() {
        Map<Phase, String> phases = new EnumMap<>(Phase.class);
        phaseA.ifPresent(header -> phases.put(Phase.A, header));
        phaseB.ifPresent(header -> phases.put(Phase.B, header));
        phaseC.ifPresent(header -> phases.put(Phase.C, header));
        return phases;
    }

    /** Whether both are about the same headers, whatever they say of units. */
    public boolean isOfSameHeaders(RecorderColumns other) {
        return time.equals(other.time) && phases().equals(other.phases());
    }

    /** Begins with what a file gives that leaves everything out. */
    public static RecorderColumnsBuilder builder() {
        return Defaults.into(RecorderColumnsBuilder.unset(), RecorderColumns.class);
    }
}
