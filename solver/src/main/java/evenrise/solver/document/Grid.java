package evenrise.solver.document;

import evenrise.solver.report.Sanitizer;
import java.util.List;

/**
 * One table of a document.
 *
 * @param id names its file and its place in a page
 * @param note what a reader must know to read its figures; empty where they say it themselves
 * @param rows cells are {@link String} or {@link Double} or {@link Integer}; an empty text where there is nothing to say
 */
public record Grid(String id, String title, String note, List<Column> columns, List<List<Object>> rows) {
    /** @param unit empty where there is none */
    public record Column(String name, String unit, boolean isNumber) {
        public static Column text(String name) {
            return new Column(name, "", false);
        }

        public static Column number(String name, String unit) {
            return new Column(name, unit, true);
        }

        /** With its unit behind a comma. */
        public String header() {
            return unit.isEmpty() ? name : name + ", " + unit;
        }
    }

    public Grid {
        columns = List.copyOf(columns);
        rows = rows.stream().map(Grid::inert).toList();
    }

    /** Names come from outside, and tables of values go to other programs as they are. */
    private static List<Object> inert(List<Object> row) {
        return row.stream()
                .map(cell -> cell instanceof String text ? (Object) Sanitizer.clean(text) : cell)
                .toList();
    }

    public Grid(String id, String title, List<Column> columns, List<List<Object>> rows) {
        this(id, title, "", columns, rows);
    }
}
