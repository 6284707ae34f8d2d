package evenrise.solver.desk;

import evenrise.model.contract.Field;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What windows ask of cures of a plan as built. */
public final class CureRequests {
    private CureRequests() {}

    /** Cures of the plan on the desk, taken as built, are searched for. */
    public record SearchCures(
            @Field(meaning = "How long, in seconds", optional = true, min = 1, max = 86_400)
            OptionalDouble timeSeconds,

            @Field(
                    meaning = "How many moves, in place of a time: the same each time",
                    optional = true,
                    min = 1,
                    max = 1e12)
            OptionalDouble moves,

            @Field(
                    meaning =
                            "Readings of a clamp meter: a table of values, a filled sheet, or what was saved at the panel",
                    byDefault = "\"\"")
            String readings,

            @Field(meaning = "The project as it was when the plan was built, as its file says it", byDefault = "\"\"")
            String was,

            @Field(meaning = "A panel schedule whose spare rows say which breakers feed nothing", byDefault = "\"\"")
            String spares,

            @Field(
                    meaning = "Whether breakers of gear that is gone stay as spares where nobody needs their slots",
                    byDefault = "false")
            boolean leavesSpares,

            @Field(meaning = "Whether everything stays for which a system would have to go off", byDefault = "false")
            boolean keepsRunning,

            @Field(
                    meaning = "Loads, shutdown groups and panels of which nothing may be off at any time",
                    byDefault = "[]")
            List<String> stayLive,

            @Field(meaning = "Shutdown groups of which a load may be off at once", optional = true, min = 0, max = 1000)
            OptionalInt mostOut,

            @Field(meaning = "How long each night is, in minutes, in their order", byDefault = "[]")
            List<Double> nights,

            @Field(meaning = "Loads that may be locked out at once", min = 1, max = 1000, byDefault = "1")
            int deadAtOnce,

            @Field(
                    meaning = "A kept plan to which the work leads, in place of a search; empty for a search",
                    byDefault = "\"\"")
            String to,

            @Field(meaning = "Revision on the sheets", byDefault = "\"A\"")
            String revision,

            @Field(meaning = "Date on the sheets; today where nothing is said", optional = true)
            Optional<String> date) {}

    /** The changes that one stage makes. */
    public record LaidStage(
            @Field(meaning = "Their numbers, from 0") List<Integer> changes) {}

    /** The order of a cure's work is looked at. */
    public record CureOrder(
            @Field(meaning = "Number of the cure, from 0", min = 0, max = 1000)
            int cure,

            @Field(
                    meaning = "Stages as somebody lays them out; the program's order where there are none",
                    byDefault = "[]")
            List<LaidStage> stages) {}

    /** A page of the sheets is looked at. */
    public record CureSheet(
            @Field(meaning = "Number of the cure, from 0", min = 0, max = 1000)
            int cure,

            @Field(
                    meaning = "Stages as somebody lays them out; the program's order where there are none",
                    byDefault = "[]")
            List<LaidStage> stages,

            @Field(meaning = "Number of the page, from 1", min = 1, max = 10_000, byDefault = "1")
            int page,

            @Field(meaning = "Whether the paper is Letter in place of A4", byDefault = "false")
            boolean isLetter) {}

    /** A cure is written into a folder beside the project. */
    public record WriteCure(
            @Field(meaning = "Number of the cure, from 0", min = 0, max = 1000)
            int cure,

            @Field(
                    meaning = "Stages as somebody lays them out; the program's order where there are none",
                    byDefault = "[]")
            List<LaidStage> stages,

            @Field(meaning = "Name of the folder", atLeast = 1)
            String name) {}

    /** One of the cures that were found takes the place of the plan on the desk. */
    public record TakeCure(
            @Field(meaning = "Number of the cure, from 0", min = 0, max = 1000)
            int cure) {}
}
