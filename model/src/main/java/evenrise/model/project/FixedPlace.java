package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The parts of a load's place that are decided already; what is absent is free. */
@FileRecord
public record FixedPlace(
        @Field(meaning = "Panel it must sit in", optional = true)
        Optional<String> panel,

        @Field(meaning = "Slot of its first pole", min = 1, optional = true)
        OptionalInt slot,

        @Field(meaning = "Board that must switch it", optional = true)
        Optional<String> board,

        @Field(meaning = "Output that must switch it", min = 1, optional = true)
        OptionalInt output,

        @Field(meaning = "Time at which it must come on, counted from the command", min = 0, optional = true)
        OptionalDouble onSeconds)
        implements FixedPlaceBuilder.With {

    /** Nothing is decided. */
    public static final FixedPlace NONE = builder().build();

    public FixedPlace {
        Contract.check(FixedPlace.class, panel, slot, board, output, onSeconds);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static FixedPlaceBuilder builder() {
        return Defaults.into(FixedPlaceBuilder.unset(), FixedPlace.class);
    }
}
