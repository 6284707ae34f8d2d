package evenrise.solver.rendering;

import evenrise.solver.document.Column;
import evenrise.solver.document.DocumentTable;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A table as the page shows it.
 *
 * @param isLong whether its rows are drawn only when somebody comes near
 */
public record PageTable(
        String id, String title, String note, List<? extends Column<?>> columns, List<Row> rows, boolean isLong) {
    private static final int MOST_ROWS_AT_ONCE = 300;

    /** @param load that the row is about; empty where it is about none */
    public record Row(String load, List<String> cells) {}

    /** @param played ids of the loads that the page plays */
    static <R> PageTable of(DocumentTable<R> table, Set<String> played) {
        List<List<String>> cells = Cells.of(table);
        List<Row> rows = IntStream.range(0, cells.size())
                .mapToObj(row -> new Row(
                        table.about()
                                .apply(table.rows().get(row))
                                .filter(played::contains)
                                .orElse(""),
                        cells.get(row)))
                .toList();
        return new PageTable(
                table.id(), table.title(), table.note(), table.columns(), rows, rows.size() > MOST_ROWS_AT_ONCE);
    }
}
