package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;
import java.util.stream.Stream;

/** What was said once of the columns of recordings, kept beside a project. */
public record Recorders(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(
                meaning = "Recorders, what was said last first; the first whose headers are all there counts",
                byDefault = "[]")
        List<RecorderColumns> recorders) {
    /** The format that this software reads. */
    public static final String FORMAT = "evenrise-recorders/1";

    /** Where nothing was said. */
    public static final Recorders NONE = new Recorders(FORMAT, List.of());

    private static final int MOST = 100;

    public Recorders {
        Contract.check(Recorders.class, format, recorders);
        recorders = List.copyOf(recorders);
    }

    /** With what is said now, in place of what was said of the same headers. */
    public Recorders and(RecorderColumns said) {
        return new Recorders(
                format,
                Stream.concat(Stream.of(said), recorders.stream().filter(each -> !each.isOfSameHeaders(said)))
                        .limit(MOST)
                        .toList());
    }
}
