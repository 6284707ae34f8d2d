package evenrise.solver.rendering;

import evenrise.solver.document.Column;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.Plain;
import evenrise.solver.document.Unrounded;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Cells of a table as people read them. */
final class Cells {
    private static final int LONGEST = 2000;
    private static final int LARGE = 1000;

    private Cells() {}

    /** Row by row. */
    static <R> List<List<String>> of(DocumentTable<R> table) {
        List<List<String>> rows = new ArrayList<>();
        table.rows().forEach(row -> rows.add(new ArrayList<>(table.columns().size())));
        for (Column<R> column : table.columns()) {
            List<Object> cells = values(table, column);
            String format = "%." + decimals(column, cells) + "f";
            for (int row = 0; row < cells.size(); row++) {
                rows.get(row)
                        .add(
                                cells.get(row) instanceof Double number
                                        ? String.format(Locale.ROOT, format, number)
                                        : text(String.valueOf(cells.get(row))));
            }
        }
        return rows;
    }

    /** What a column has in each row. */
    static <R> List<Object> values(DocumentTable<R> table, Column<R> column) {
        return table.rows().stream().map(column::of).toList();
    }

    /**
     * A column has as many decimals in every row, so its numbers compare at a glance: two, none where all are whole, one
     * where it holds a thousand amperes or more, three where two would round a time that somebody sets or measures.
     */
    static int decimals(Column<?> column, List<Object> cells) {
        if (cells.stream().allMatch(cell -> !(cell instanceof Double number) || number == Math.rint(number))) {
            return 0;
        }
        return isFine(column, cells) ? 3 : isLarge(column, cells) ? 1 : 2;
    }

    private static boolean isFine(Column<?> column, List<Object> cells) {
        return column.unit().equals("s")
                && cells.stream()
                        .anyMatch(cell -> cell instanceof Double seconds && !Unrounded.isInHundredths(seconds));
    }

    private static boolean isLarge(Column<?> column, List<Object> cells) {
        return column.unit().equals("A")
                && cells.stream().anyMatch(cell -> cell instanceof Double number && number >= LARGE);
    }

    /** Marks that turn the direction of text, and other controls, are left out; very long names are cut. */
    static String text(String text) {
        return Plain.text(text, LONGEST);
    }
}
