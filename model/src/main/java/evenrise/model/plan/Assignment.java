package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Where one load sits and when it comes on. */
@FileRecord
public record Assignment(
        @Field(meaning = "The load", atLeast = 1) String load,
        @Field(meaning = "Panel it sits in", atLeast = 1) String panel,
        @Field(meaning = "Slot of its first pole") int slot,

        @Field(meaning = "Phases its poles touch, in the order of its slots")
        List<Phase> phases,

        @Field(meaning = "Board that switches it; null for an unswitched load", optional = true)
        Optional<String> board,

        @Field(meaning = "Output that switches it; null for an unswitched load", optional = true)
        OptionalInt output,

        @Field(meaning = "Nominal switch-on time; null for an unswitched load", optional = true, least = 0)
        OptionalDouble onSeconds,

        @Field(
                meaning = "Nominal switch-off time after the off command; null for an unswitched load",
                optional = true,
                least = 0)
        OptionalDouble offSeconds)
        implements AssignmentBuilder.With {
    public Assignment {
        Contract.check(Assignment.class, load, panel, slot, phases, board, output, onSeconds, offSeconds);
        phases = List.copyOf(phases);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static AssignmentBuilder builder() {
        return Defaults.into(AssignmentBuilder.unset(), Assignment.class);
    }
}
