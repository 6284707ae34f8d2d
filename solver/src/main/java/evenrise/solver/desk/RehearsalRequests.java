package evenrise.solver.desk;

import evenrise.model.contract.Field;
import evenrise.model.event.ScriptEvent;
import java.util.List;

/** What windows ask of happenings and of chance. */
public final class RehearsalRequests {
    private RehearsalRequests() {}

    /** A script is played on the plan. */
    public record PlayScript(
            @Field(meaning = "What happens, in the order of time", atLeast = 1)
            List<ScriptEvent> events,

            @Field(meaning = "Whether what is on draws its idle current, as if no show ran", byDefault = "false")
            boolean idle,

            @Field(meaning = "Supply, panel or node whose current is read", byDefault = "\"supply\"")
            String node) {}

    /** A script is kept in the folder. */
    public record KeepScript(
            @Field(meaning = "Its name", atLeast = 1) String name,

            @Field(meaning = "What happens, in the order of time", atLeast = 1)
            List<ScriptEvent> events) {}

    /** Switch-ons are drawn by chance. */
    public record Chance(
            @Field(meaning = "How many", min = 1, max = 100_000, byDefault = "2000")
            int trials,

            @Field(
                    meaning = "What chance begins with: the same seed draws the same",
                    min = 0,
                    max = 1e9,
                    byDefault = "1")
            int seed) {}

    /** The current of a node over time is looked at. */
    public record AtNode(
            @Field(meaning = "Supply, panel or node", atLeast = 1)
            String node) {}
}
