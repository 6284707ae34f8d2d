package evenrise.solver.rendering;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToIntFunction;

/**
 * Rows of a table about one thing, each by the keys of its columns.
 *
 * @param of id of that thing
 */
record PrintBlock(String of, List<Map<String, String>> rows) {
    /** Of a table's rows that are about the same, in the order in which they first occur. */
    static <R> List<PrintBlock> of(ShownTable<R> table, Function<R, String> about) {
        return table.byKey(about).entrySet().stream()
                .map(each -> new PrintBlock(each.getKey(), each.getValue()))
                .toList();
    }

    /** Cut into parts of about {@code rows} rows; no block is cut. */
    static <B> List<List<B>> parts(List<B> blocks, ToIntFunction<B> size, int rows) {
        List<List<B>> parts = new ArrayList<>(List.of(new ArrayList<>()));
        int count = 0;
        for (B block : blocks) {
            if (count > 0 && count + size.applyAsInt(block) > rows) {
                parts.add(new ArrayList<>());
                count = 0;
            }
            parts.get(parts.size() - 1).add(block);
            count += size.applyAsInt(block);
        }
        return parts;
    }

    static List<List<PrintBlock>> parts(List<PrintBlock> blocks, int rows) {
        return parts(blocks, block -> block.rows().size(), rows);
    }

    /** Its id as people read it. */
    public String name() {
        return Cells.text(of);
    }
}
