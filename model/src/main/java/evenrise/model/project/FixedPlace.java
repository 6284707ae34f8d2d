package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
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
        OptionalInt output)
        implements FixedPlaceBuilder.With {

    /** Nothing is decided. */
    public static final FixedPlace NONE = builder().build();

    public FixedPlace {
        Contract.check(FixedPlace.class, panel, slot, board, output);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static FixedPlaceBuilder builder() {
        return Defaults.into(FixedPlaceBuilder.unset(), FixedPlace.class);
    }
}
