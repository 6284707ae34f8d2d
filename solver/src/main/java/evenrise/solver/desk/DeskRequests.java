package evenrise.solver.desk;

import evenrise.model.contract.Field;
import evenrise.model.intake.Mapping;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What windows ask of the desk: the types of its interface. */
public final class DeskRequests {
    private DeskRequests() {}

    /** Nothing more is to be said. */
    public record Bare() {}

    /** A load is put down: in a slot, on an output, at a time, or, where none of these is said, out of its panel. */
    public record Move(
            @Field(meaning = "The load", atLeast = 1) String load,

            @Field(meaning = "Panel to put it in", optional = true)
            Optional<String> panel,

            @Field(meaning = "First slot there", optional = true, min = 1, max = 1000)
            OptionalInt slot,

            @Field(meaning = "Board to switch it", optional = true)
            Optional<String> board,

            @Field(meaning = "Output there", optional = true, min = 1, max = 1000)
            OptionalInt output,

            @Field(
                    meaning = "Time that its output is to come on, where it has one of its own",
                    optional = true,
                    min = 0,
                    max = 86_400)
            OptionalDouble onSeconds) {}

    /** A load is in the hand. */
    public record Hang(
            @Field(meaning = "The load", atLeast = 1) String load,

            @Field(meaning = "Panels that are looked at", byDefault = "[]")
            List<String> panels) {}

    /** A board is set otherwise. */
    public record Setting(
            @Field(meaning = "The board", atLeast = 1) String board,

            @Field(meaning = "Start delay, one that its type offers", min = 0, max = 3600)
            double startDelaySeconds,

            @Field(meaning = "Time between outputs, one that its type offers", min = 0, max = 3600)
            double stepSeconds) {}

    /** What of a list is another. */
    public record Cells(
            @Field(meaning = "The list: loads, panels, boards and so on", atLeast = 1)
            String list,

            @Field(meaning = "Entries that are taken out", byDefault = "[]")
            List<String> removed,

            @Field(meaning = "Cells that are another", byDefault = "[]")
            List<OneCell> cells) {}

    /** What stands in a cell now. */
    public record OneCell(
            @Field(meaning = "The entry; one that there is none of is added", atLeast = 1)
            String id,

            @Field(meaning = "The column", atLeast = 1) String column,

            @Field(meaning = "The text; an empty one states nothing")
            String text) {}

    /** Places are kept as they are, or set free. */
    public record Pin(
            @Field(meaning = "Whether they are pinned; set free else")
            boolean pinned,

            @Field(meaning = "Whether it is about every load", byDefault = "false")
            boolean all,

            @Field(meaning = "Panels", byDefault = "[]") List<String> panels,
            @Field(meaning = "Boards", byDefault = "[]") List<String> boards,

            @Field(meaning = "Shutdown groups", byDefault = "[]")
            List<String> groups,

            @Field(meaning = "Loads", byDefault = "[]") List<String> loads) {}

    /** A search is to begin at what lies on the desk. */
    public record Search(
            @Field(meaning = "Wall time", optional = true, above = 0, max = 86_400)
            OptionalDouble timeSeconds,

            @Field(meaning = "Moves to try, in the place of a time", optional = true, min = 1, max = 1e12)
            OptionalDouble moves,

            @Field(meaning = "Breakers and leads that may be moved at most", optional = true, min = 0, max = 100_000)
            OptionalInt mostMoved,

            @Field(
                    meaning = "Whether what was moved by hand since the desk was opened, or since the last search was"
                            + " taken, stays where it is",
                    byDefault = "false")
            boolean aroundHand) {}

    /** The name of a plan that is kept aside. */
    public record Named(
            @Field(meaning = "Its name", atLeast = 1) String name) {}

    /** Two plans are looked at side by side. */
    public record Pair(
            @Field(meaning = "Name of a kept plan; the plan on the desk when empty", byDefault = "\"\"")
            String left,

            @Field(meaning = "Name of another", byDefault = "\"\"")
            String right) {}

    /** A question about the plan; just one of them. */
    public record Why(
            @Field(meaning = "Why this load is where it is", optional = true)
            Optional<String> load,

            @Field(meaning = "What this rule asks and how it is kept", optional = true)
            Optional<String> rule) {}

    /** A change file that came back. */
    public record ReturnedMoves(
            @Field(meaning = "The file as it came", atLeast = 1)
            String text) {}

    /** A list that was pasted or dropped. */
    public record PastedList(
            @Field(meaning = "The list: cells parted by tabs, semicolons or commas")
            String text,

            @Field(meaning = "What the project is to be called", byDefault = "\"\"")
            String name,

            @Field(
                    meaning = "How it is to be read, as it was told and corrected; as usual when absent",
                    optional = true)
            Optional<Mapping> mapping) {}
}
