package evenrise.solver.document;

import evenrise.solver.report.page.Grid;
import evenrise.solver.report.page.Plain;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Cells of a table as people read them. */
final class Cells {
    private static final int LONGEST = 2000;

    private Cells() {}

    /** A column has two decimals or, where all its numbers are whole, none: so its numbers compare at a glance. */
    static List<List<String>> of(Grid grid) {
        List<String> formats = IntStream.range(0, grid.columns().size())
                .mapToObj(column -> isWhole(grid, column) ? "%.0f" : "%.2f")
                .toList();
        return grid.rows().stream()
                .map(row -> IntStream.range(0, row.size())
                        .mapToObj(column -> row.get(column) instanceof Double number
                                ? String.format(Locale.ROOT, formats.get(column), number)
                                : text(String.valueOf(row.get(column))))
                        .toList())
                .toList();
    }

    /** Whether none of its numbers has a fraction. */
    static boolean isWhole(Grid grid, int column) {
        return grid.rows().stream()
                .map(row -> row.get(column))
                .allMatch(cell -> !(cell instanceof Double number) || number == Math.rint(number));
    }

    /** Marks that turn the direction of text, and other controls, are left out; very long names are cut. */
    static String text(String text) {
        return Plain.text(text, LONGEST);
    }
}
