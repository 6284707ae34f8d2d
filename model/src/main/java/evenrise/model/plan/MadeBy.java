package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** What made a plan, so that it can be made again. */
@FileRecord
public record MadeBy(
        @Field(meaning = "Version of this software", atLeast = 1)
        String softwareVersion,

        @Field(meaning = "SHA-256 of the project file, in hexadecimal", atLeast = 1)
        String projectSha256,

        @Field(meaning = "Seed of the search") long seed,

        @Field(meaning = "Parallel searches, of which the best plan was kept", min = 1)
        int threads,

        @Field(meaning = "Moves allowed to each search; null when time was the limit", optional = true)
        OptionalLong movesAllowed,

        @Field(
                meaning = "Time used; null when moves were the limit, so that such plans are equal to the byte",
                optional = true,
                least = 0)
        OptionalDouble timeUsedSeconds,

        @Field(
                meaning = "Whether a place that breaks a rating counted as better than none (plan --place-all); false"
                        + " when absent",
                optional = true)
        Optional<Boolean> placesAll)
        implements MadeByBuilder.With {
    public MadeBy {
        Contract.check(
                MadeBy.class, softwareVersion, projectSha256, seed, threads, movesAllowed, timeUsedSeconds, placesAll);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static MadeByBuilder builder() {
        return Defaults.into(MadeByBuilder.unset(), MadeBy.class);
    }
}
