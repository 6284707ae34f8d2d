package evenrise.solver.rendering;

import evenrise.solver.document.Figures;
import evenrise.solver.document.Grid;
import evenrise.solver.document.Plain;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Cells of a table as people read them. */
final class Cells {
    private static final int LONGEST = 2000;
    private static final int LARGE = 1000;

    private Cells() {}

    /**
     * A column has as many decimals in every row, so its numbers compare at a glance: two, none where all are whole, one
     * where it holds a thousand amperes or more, three where two would round a time that somebody sets or measures.
     */
    static List<List<String>> of(Grid grid) {
        List<String> formats = IntStream.range(0, grid.columns().size())
                .mapToObj(column -> "%." + decimals(grid, column) + "f")
                .toList();
        return grid.rows().stream()
                .map(row -> IntStream.range(0, row.size())
                        .mapToObj(column -> row.get(column) instanceof Double number
                                ? String.format(Locale.ROOT, formats.get(column), number)
                                : text(String.valueOf(row.get(column))))
                        .toList())
                .toList();
    }

    static int decimals(Grid grid, int column) {
        if (isWhole(grid, column)) {
            return 0;
        }
        return isFine(grid, column) ? 3 : isLarge(grid, column) ? 1 : 2;
    }

    /** Whether none of its numbers has a fraction. */
    private static boolean isWhole(Grid grid, int column) {
        return grid.rows().stream()
                .map(row -> row.get(column))
                .allMatch(cell -> !(cell instanceof Double number) || number == Math.rint(number));
    }

    private static boolean isFine(Grid grid, int column) {
        return grid.columns().get(column).unit().equals("s")
                && grid.rows().stream()
                        .anyMatch(row -> row.get(column) instanceof Double seconds && !Figures.isInHundredths(seconds));
    }

    private static boolean isLarge(Grid grid, int column) {
        return grid.columns().get(column).unit().equals("A")
                && grid.rows().stream().anyMatch(row -> row.get(column) instanceof Double number && number >= LARGE);
    }

    /** Marks that turn the direction of text, and other controls, are left out; very long names are cut. */
    static String text(String text) {
        return Plain.text(text, LONGEST);
    }
}
