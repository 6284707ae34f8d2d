package evenrise.solver.desk;

import evenrise.model.contract.Field;
import evenrise.model.project.TitleBlock;
import java.util.List;
import java.util.Optional;

/** What windows ask of documents. */
public final class DocumentRequests {
    private DocumentRequests() {}

    /** Documents are drawn, to be looked at. */
    public record Draw(
            @Field(meaning = "Revision on every page", byDefault = "\"A\"")
            String revision,

            @Field(meaning = "Date on every page; today when empty", byDefault = "\"\"")
            String date,

            @Field(meaning = "Kinds of files, of html, pdf, xlsx, dxf, csv", byDefault = "[]")
            List<String> formats,

            @Field(meaning = "Sections of the printed sheets; all when empty", byDefault = "[]")
            List<String> sections,

            @Field(meaning = "Kept plan that changes are marked against; none when empty", byDefault = "\"\"")
            String against,

            @Field(
                    meaning = "Switch-ons drawn for percentiles of peaks and dips",
                    min = 0,
                    max = 100_000,
                    byDefault = "0")
            int trials,

            @Field(meaning = "Labels on stock sheets: a stock for a kind, such as cable=a4-63.5x38.1", byDefault = "[]")
            List<String> labels,

            @Field(meaning = "Where the page lies, for codes on labels; plan.html when empty", byDefault = "\"\"")
            String labelLink,

            @Field(
                    meaning = "Of labels and of one more set of site sheets, of en, de, fr; en when empty",
                    byDefault = "\"\"")
            String language,

            @Field(meaning = "Whether tables of values are headed by keys", byDefault = "false")
            boolean csvKeys,

            @Field(meaning = "Whether tables of values begin with a byte-order mark", byDefault = "false")
            boolean csvMark,

            @Field(meaning = "What else stands in the title block", optional = true)
            Optional<TitleBlock> title) {}

    /** The page that can be tried is made, to be mailed. */
    public record Mail(
            @Field(meaning = "Revision on the page", byDefault = "\"A\"")
            String revision,

            @Field(meaning = "Date on the page; today when empty", byDefault = "\"\"")
            String date,

            @Field(meaning = "Kept plan that changes are marked against; none when empty", byDefault = "\"\"")
            String against,

            @Field(meaning = "What else stands in the title block", optional = true)
            Optional<TitleBlock> title) {}

    /** A file that was drawn is looked at. */
    public record Look(
            @Field(meaning = "Number of the drawn set", min = 1, max = 1e9)
            int drawn,

            @Field(meaning = "Name of the file", atLeast = 1)
            String file) {}

    /** What was drawn is written. */
    public record Write(
            @Field(meaning = "Number of the drawn set", min = 1, max = 1e9)
            int drawn,

            @Field(meaning = "Folder beside the project's file", byDefault = "\"documents\"")
            String folder,

            @Field(
                    meaning = "Name under which the plan is kept, for changes against it later; not kept when empty",
                    byDefault = "\"\"")
            String keepAs,

            @Field(
                    meaning = "Whether files are overwritten that no earlier writing made or that were changed since",
                    byDefault = "false")
            boolean overwrite) {}
}
