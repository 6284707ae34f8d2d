package evenrise.solver.document;

import evenrise.solver.report.page.Grid;
import evenrise.solver.report.page.Plain;
import java.util.List;
import java.util.Locale;

/** Cells of a table as people read them. */
final class Cells {
    private static final int LONGEST = 400;

    private Cells() {}

    static List<List<String>> of(Grid grid) {
        return grid.rows().stream()
                .map(row -> row.stream().map(Cells::text).toList())
                .toList();
    }

    /** Marks that turn the direction of text, and other controls, are left out; very long names are cut. */
    static String text(Object cell) {
        if (cell instanceof Double number) {
            return String.format(
                    Locale.ROOT, number == Math.rint(number) && Math.abs(number) < 1e9 ? "%.0f" : "%.2f", number);
        }
        return Plain.text(String.valueOf(cell), LONGEST);
    }
}
