package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * One table of a document: rows of one type, and the columns by which every format shows them.
 *
 * @param id names its file and its place in a page
 * @param note what a reader must know to read its figures; empty where they say it themselves
 * @param more columns for who calculates or sorts by machine, beside those that people read
 * @param about id of the load that a row is about, where it is about one
 */
public record DocumentTable<R>(
        String id,
        String title,
        String note,
        List<Column<R>> columns,
        List<Column<R>> more,
        List<R> rows,
        Function<R, Optional<String>> about) {
    public DocumentTable {
        columns = List.copyOf(columns);
        more = List.copyOf(more);
        rows = List.copyOf(rows);
    }

    /** Of columns that people read alone. */
    public DocumentTable(
            String id,
            String title,
            String note,
            List<Column<R>> columns,
            List<R> rows,
            Function<R, Optional<String>> about) {
        this(id, title, note, columns, List.of(), rows, about);
    }

    /** The same with columns for who calculates. */
    DocumentTable<R> with(List<Column<R>> further) {
        return new DocumentTable<>(id, title, note, columns, further, rows, about);
    }

    /** All columns: those that people read first. */
    public List<Column<R>> allColumns() {
        return Stream.concat(columns.stream(), more.stream()).toList();
    }

    /** Of rows that are about no load. */
    static <R> DocumentTable<R> of(String id, String title, String note, List<Column<R>> columns, List<R> rows) {
        return new DocumentTable<>(id, title, note, columns, rows, row -> Optional.empty());
    }

    /** Of rows that are about a load each. */
    static <R> DocumentTable<R> ofLoads(
            String id, String title, String note, List<Column<R>> columns, List<R> rows, Function<R, String> load) {
        return new DocumentTable<>(id, title, note, columns, rows, row -> Optional.of(load.apply(row)));
    }

    /** What stands below its values; none where figures say it themselves. */
    public List<String> remarks() {
        return note.isEmpty() ? List.of() : List.of(note);
    }

    /** Keys of all columns with their units, in the place of headers: {@code running_a}. */
    public List<String> fields() {
        return allColumns().stream().map(Column::fieldWithUnit).toList();
    }

    /** Headers first; numbers in full. */
    public List<List<String>> values() {
        List<List<String>> values = new ArrayList<>();
        List<Column<R>> all = allColumns();
        values.add(all.stream().map(Column::header).toList());
        for (R row : rows) {
            values.add(all.stream().map(column -> shown(column.of(row))).toList());
        }
        return values;
    }

    private static String shown(Object value) {
        return value instanceof Double number ? Decimals.value(number) : String.valueOf(value);
    }
}
