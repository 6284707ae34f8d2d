package evenrise.solver.desk;

import evenrise.model.contract.Field;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What windows ask of what might be. */
public final class SupposedRequests {
    private SupposedRequests() {}

    /** Room is looked for. */
    public record Room(
            @Field(meaning = "Running current of the load", min = 0, max = 99_999)
            double amps,

            @Field(meaning = "Its poles", min = 1, max = 3, byDefault = "1")
            int poles,

            @Field(meaning = "Whether its breaker is switched", byDefault = "false")
            boolean switched) {}

    /** What happens. */
    public record Play(
            @Field(
                    meaning = "Happenings, each [SECONDS:]WORD[=NUMBER][@WHICH]; an ordinary day when empty",
                    byDefault = "[]")
            List<String> events,

            @Field(meaning = "Whether what is on draws its idle current, as if no show ran", byDefault = "false")
            boolean idle) {}

    /** What is to be otherwise, all at once. */
    public record Suppose(
            @Field(meaning = "Panel that is not there", optional = true)
            Optional<String> without,

            @Field(meaning = "Panel whose free slots are taken by others", optional = true)
            Optional<String> full,

            @Field(meaning = "Running current of one load more", optional = true, above = 0, max = 99_999)
            OptionalDouble addedAmps,

            @Field(meaning = "Its poles", min = 1, max = 3, byDefault = "1")
            int addedPoles,

            @Field(meaning = "Whether it is switched", byDefault = "false")
            boolean addedSwitched,

            @Field(meaning = "Supply or panel whose inrush limit is another", byDefault = "\"supply\"")
            String limitedAt,

            @Field(meaning = "That limit", optional = true, above = 0, max = 1_000_000)
            OptionalDouble limitAmps,

            @Field(meaning = "Breakers and leads that may be moved at most", optional = true, min = 0, max = 100_000)
            OptionalInt mostMoved,

            @Field(meaning = "How long a plan is looked for", above = 0, max = 600, byDefault = "5")
            double timeSeconds) {}
}
