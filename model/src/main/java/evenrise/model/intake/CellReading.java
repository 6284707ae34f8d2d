package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;

/** A text of a list's column that is to be read as another, so that a list is corrected without being touched. */
@FileRecord
public record CellReading(
        @Field(meaning = "What the column means: a field's name of columns", atLeast = 1)
        String of,

        @Field(meaning = "Name of the pieces that it is about, as the list has it; all when absent", optional = true)
        Optional<String> name,

        @Field(meaning = "Text of the cell; empty for an empty cell", byDefault = "\"\"")
        String written,

        @Field(meaning = "Text that is read instead; the same as written for no change", byDefault = "\"\"")
        String reads,

        @Field(meaning = "What came of it, for people; not read", optional = true)
        Optional<String> meant)
        implements CellReadingBuilder.With {
    public CellReading {
        Contract.check(CellReading.class, of, name, written, reads, meant);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static CellReadingBuilder builder() {
        return Defaults.into(CellReadingBuilder.unset(), CellReading.class);
    }
}
