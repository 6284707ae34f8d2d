package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** How one sheet of a workbook is to be read, where its headers are others than those of the rest. */
@FileRecord
public record SheetMapping(
        @Field(meaning = "Name of the sheet; empty for a text file")
        String sheet,

        @Field(
                meaning = "Row of the headers, counted from 1; found when absent",
                min = 1,
                max = 1_000_000,
                optional = true)
        OptionalInt headerRow,

        @Field(meaning = "Headers by what they mean", optional = true)
        Optional<Columns> columns,

        @Field(meaning = "Headers of columns that are not to be read", distinct = true, optional = true)
        List<String> ignore) {
    public SheetMapping {
        Contract.check(SheetMapping.class, sheet, headerRow, columns, ignore);
        ignore = List.copyOf(ignore);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SheetMappingBuilder builder() {
        return Defaults.into(SheetMappingBuilder.unset(), SheetMapping.class);
    }
}
