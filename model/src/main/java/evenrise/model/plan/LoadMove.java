package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One load put elsewhere by hand: in a slot, on an output, at a time, or, where none of these is said, out of its panel.
 * Whoever has the place already gets the one that the load leaves.
 */
@FileRecord
public record LoadMove(
        @Field(meaning = "The load", atLeast = 1) String load,

        @Field(meaning = "Panel that it is put in", optional = true)
        Optional<String> panel,

        @Field(meaning = "Slot of its first pole there", min = 1, max = 1000, optional = true)
        OptionalInt slot,

        @Field(meaning = "Board that is to switch it", optional = true)
        Optional<String> board,

        @Field(meaning = "Output that is to switch it", min = 1, max = 1000, optional = true)
        OptionalInt output,

        @Field(
                meaning = "Time that its output is to come on, where it has one of its own",
                min = 0,
                max = 86_400,
                optional = true)
        OptionalDouble onSeconds)
        implements LoadMoveBuilder.With {
    public LoadMove {
        Contract.check(LoadMove.class, load, panel, slot, board, output, onSeconds);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static LoadMoveBuilder builder() {
        return Defaults.into(LoadMoveBuilder.unset(), LoadMove.class);
    }
}
