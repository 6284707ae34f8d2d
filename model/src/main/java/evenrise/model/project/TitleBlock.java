package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;
import java.util.Optional;

/** What stands in the title block of a set of sheets beside what the program knows itself. */
public record TitleBlock(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "For whom the work is done", atLeast = 1, optional = true)
        Optional<String> client,

        @Field(meaning = "Where the plant stands", atLeast = 1, optional = true)
        Optional<String> site,

        @Field(meaning = "Number of the job, as the office counts", atLeast = 1, optional = true)
        Optional<String> number,

        @Field(meaning = "Who issues the sheets: name, address, licence", atLeast = 1, optional = true)
        Optional<String> issuedBy,

        @Field(meaning = "Who drew the sheets", atLeast = 1, optional = true)
        Optional<String> drawnBy,

        @Field(meaning = "Who checked the sheets", atLeast = 1, optional = true)
        Optional<String> checkedBy,

        @Field(
                meaning = "What the sheets are issued for, such as permit, tender, construction or record",
                atLeast = 1,
                optional = true)
        Optional<String> issuedFor,

        @Field(meaning = "What the number of each sheet begins with", atLeast = 1, byDefault = "\"E\"")
        String sheetPrefix,

        @Field(meaning = "Revisions so far, the first one first", byDefault = "[]")
        List<SheetRevision> revisions) {

    /** The format that this software reads. */
    public static final String FORMAT = "evenrise-title/1";

    /** Where nobody states any. */
    public static final TitleBlock NONE = new TitleBlock(
            FORMAT,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "E",
            List.of());

    public TitleBlock {
        Contract.check(
                TitleBlock.class,
                format,
                client,
                site,
                number,
                issuedBy,
                drawnBy,
                checkedBy,
                issuedFor,
                sheetPrefix,
                revisions);
        revisions = List.copyOf(revisions);
    }
}
