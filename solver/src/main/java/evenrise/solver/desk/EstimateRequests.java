package evenrise.solver.desk;

import evenrise.model.contract.Field;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What windows ask of an estimate and of an offer. */
public final class EstimateRequests {
    private EstimateRequests() {}

    /** Make-ups are looked at in order of price. */
    public record Estimate(
            @Field(meaning = "Moves of each search", min = 1, max = 1e9, byDefault = "60000")
            int moves,

            @Field(meaning = "Make-ups that may be planned", min = 0, max = 20_000, byDefault = "60")
            int tries,

            @Field(meaning = "What chance begins with", min = 0, max = 1e9, byDefault = "1")
            int seed,

            @Field(
                    meaning = "Free slots that each panel leaves; with none of the three, the usual of bids",
                    optional = true,
                    min = 0,
                    max = 1000)
            OptionalInt spareSlots,

            @Field(meaning = "Free outputs that each board in use leaves", optional = true, min = 0, max = 1000)
            OptionalInt spareOutputs,

            @Field(meaning = "Part of each panel's running current that is left", optional = true, min = 0, max = 99)
            OptionalDouble sparePercent,

            @Field(meaning = "Whether numbers of panels and boards are compared, too", byDefault = "false")
            boolean numbers,

            @Field(meaning = "Draws of quantities that are open; 0 for none", min = 0, max = 100_000, byDefault = "0")
            int draws,

            @Field(meaning = "Ends after this time with what it has", optional = true, min = 1, max = 86_400)
            OptionalDouble limitSeconds) {}

    /** A make-up of the estimate. */
    public record OfMakeUp(
            @Field(meaning = "As its files are called, without their endings", atLeast = 1)
            String files) {}

    /** One of the ways that are offered. */
    public record Alternative(
            @Field(meaning = "What it is called", atLeast = 1)
            String name,

            @Field(meaning = "The make-up's files; empty for the plan on the desk", byDefault = "\"\"")
            String files) {}

    /** Alternates are drawn side by side, to be looked at. */
    public record DrawOffer(
            @Field(meaning = "Stands above them", byDefault = "\"Alternates\"")
            String title,

            @Field(meaning = "The first is what the others are told apart from", atLeast = 1)
            List<Alternative> alternates,

            @Field(meaning = "Draws of quantities that are open; 0 for none", min = 0, max = 100_000, byDefault = "0")
            int draws) {}

    /** What was drawn is written. */
    public record WriteOffer(
            @Field(meaning = "Its number", min = 1, max = 1e9)
            int drawn,

            @Field(meaning = "Folder beside the project's file", byDefault = "\"offer\"")
            String folder) {}

    /** A table of prices in the folder. */
    public record PriceTableFile(
            @Field(meaning = "The file, .csv or .xlsx", atLeast = 1)
            String file) {}
}
