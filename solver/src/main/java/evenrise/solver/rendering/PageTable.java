package evenrise.solver.rendering;

import evenrise.solver.document.Grid;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A table as the page shows it.
 *
 * @param isLong whether its rows are drawn only when somebody comes near
 */
public record PageTable(
        String id, String title, String note, List<Grid.Column> columns, List<Row> rows, boolean isLong) {
    private static final int MOST_ROWS_AT_ONCE = 300;
    private static final Set<String> NAMING_A_LOAD = Set.of("Load", "Place");

    /** @param load that the row is about; empty where it is about none */
    public record Row(String load, List<String> cells) {}

    /** @param loads ids of those that the page plays, by what a table shows of them */
    static PageTable of(Grid grid, Map<String, String> loads) {
        List<List<String>> cells = Cells.of(grid);
        int naming = IntStream.range(0, grid.columns().size())
                .filter(column ->
                        NAMING_A_LOAD.contains(grid.columns().get(column).name()))
                .filter(column -> grid.rows().stream().anyMatch(row -> loads.containsKey(row.get(column))))
                .findFirst()
                .orElse(-1);
        List<Row> rows = IntStream.range(0, cells.size())
                .mapToObj(row -> new Row(load(grid.rows().get(row), naming, loads), cells.get(row)))
                .toList();
        return new PageTable(
                grid.id(), grid.title(), grid.note(), grid.columns(), rows, rows.size() > MOST_ROWS_AT_ONCE);
    }

    private static String load(List<Object> row, int naming, Map<String, String> loads) {
        return naming >= 0 && row.get(naming) instanceof String id ? loads.getOrDefault(id, "") : "";
    }
}
