package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One control board, mounted in a panel. */
@FileRecord
public record Board(
        @Field(meaning = "Name by which the board is referred to", atLeast = 1)
        String id,

        @Field(meaning = "Type of the board", atLeast = 1) String type,

        @Field(meaning = "Panel that houses the board", atLeast = 1)
        String panel,

        @Field(
                meaning = "Panels whose breakers the board can switch; its own when absent",
                distinct = true,
                optional = true)
        List<String> reaches,

        @Field(
                meaning = "Board whose last used output starts this one; absent when it starts with the command",
                optional = true)
        Optional<String> after,

        @Field(
                meaning = "Greatest voltage to earth on the terminals of its outputs, by its maker; leads are re-landed"
                        + " on the live board where it is less than 50 V, on an isolated one else",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble outputVolts,

        @Field(meaning = "System that it serves; whichever its loads belong to when absent", optional = true)
        Optional<String> system,

        @Field(
                meaning = "What feeds the board itself: a panel, a node, or a load that is not switched; its panel when"
                        + " absent. Without voltage there for longer than behaviour.brownout_hold_s its outputs"
                        + " open",
                optional = true)
        Optional<String> fedBy)
        implements BoardBuilder.With {
    public Board {
        Contract.check(Board.class, id, type, panel, reaches, after, outputVolts, system, fedBy);
        reaches = reaches.isEmpty() ? List.of(panel) : List.copyOf(reaches);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BoardBuilder builder() {
        return Defaults.into(BoardBuilder.unset(), Board.class);
    }
}
