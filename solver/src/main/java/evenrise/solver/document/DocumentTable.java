package evenrise.solver.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One table of a document: rows of one type, and the columns by which every format shows them.
 *
 * @param id names its file and its place in a page
 * @param note what a reader must know to read its figures; empty where they say it themselves
 * @param about id of the load that a row is about, where it is about one
 */
public record DocumentTable<R>(
        String id,
        String title,
        String note,
        List<Column<R>> columns,
        List<R> rows,
        Function<R, Optional<String>> about) {
    public DocumentTable {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
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

    /** Headers first; numbers in full. */
    public List<List<String>> values() {
        List<List<String>> values = new ArrayList<>();
        values.add(columns.stream().map(Column::header).toList());
        for (R row : rows) {
            values.add(columns.stream()
                    .map(column -> String.valueOf(column.of(row)))
                    .toList());
        }
        return values;
    }
}
