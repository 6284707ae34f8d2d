package evenrise.solver.rendering;

import evenrise.solver.document.Column;
import evenrise.solver.document.DocumentTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * A table as page and print show it: each row with its cells as texts.
 */
public record ShownTable<R>(
        String id, String title, String note, List<Column<R>> columns, List<R> rows, List<List<String>> cells) {
    static <R> ShownTable<R> of(DocumentTable<R> table) {
        return new ShownTable<>(
                table.id(), table.title(), table.note(), table.columns(), table.rows(), Cells.of(table));
    }

    /** The cells of each row by the keys of their columns. */
    List<Map<String, String>> byKey() {
        return IntStream.range(0, rows.size()).mapToObj(this::byKey).toList();
    }

    /** The same of the rows that have one {@code of} in common, in the order in which those first occur. */
    <K> Map<K, List<Map<String, String>>> byKey(Function<R, K> of) {
        Map<K, List<Map<String, String>>> blocks = new LinkedHashMap<>();
        for (int row = 0; row < rows.size(); row++) {
            blocks.computeIfAbsent(of.apply(rows.get(row)), any -> new ArrayList<>())
                    .add(byKey(row));
        }
        return blocks;
    }

    private Map<String, String> byKey(int row) {
        Map<String, String> named = new LinkedHashMap<>();
        for (int column = 0; column < columns.size(); column++) {
            named.put(columns.get(column).key(), cells.get(row).get(column));
        }
        return named;
    }
}
