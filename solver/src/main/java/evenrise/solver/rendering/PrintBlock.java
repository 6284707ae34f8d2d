package evenrise.solver.rendering;

import evenrise.solver.document.Grid;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Rows of a table that have the same first cell, each row by the names of its columns.
 *
 * @param name that first cell
 */
record PrintBlock(String name, List<Map<String, String>> rows) {
    /** In the order in which they first occur. */
    static List<PrintBlock> of(Grid grid) {
        Map<String, List<Map<String, String>>> blocks = new LinkedHashMap<>();
        String first = grid.columns().get(0).name();
        rows(grid)
                .forEach(row -> blocks.computeIfAbsent(row.get(first), any -> new ArrayList<>())
                        .add(row));
        return blocks.entrySet().stream()
                .map(each -> new PrintBlock(each.getKey(), each.getValue()))
                .toList();
    }

    static List<Map<String, String>> rows(Grid grid) {
        return Cells.of(grid).stream()
                .map(cells -> {
                    Map<String, String> row = new LinkedHashMap<>();
                    for (int column = 0; column < cells.size(); column++) {
                        row.put(grid.columns().get(column).name(), cells.get(column));
                    }
                    return row;
                })
                .toList();
    }

    /** Cut into parts of about {@code rows} rows; no block is cut. */
    static List<List<PrintBlock>> parts(List<PrintBlock> blocks, int rows) {
        List<List<PrintBlock>> parts = new ArrayList<>(List.of(new ArrayList<>()));
        int count = 0;
        for (PrintBlock block : blocks) {
            if (count > 0 && count + block.rows().size() > rows) {
                parts.add(new ArrayList<>());
                count = 0;
            }
            parts.get(parts.size() - 1).add(block);
            count += block.rows().size();
        }
        return parts;
    }
}
