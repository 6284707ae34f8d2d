package evenrise.solver.table;

import evenrise.model.plan.Cautions;
import java.util.Collection;
import java.util.List;

/**
 * A sheet of a workbook, or the whole of a text file.
 *
 * @param name of the sheet; empty for a text file
 * @param rows that hold anything, in order; without the cautions that our own tables end with
 */
public record ReadTable(String name, List<Row> rows) {
    /** @param number as the table counts, from 1 */
    public record Row(int number, List<Cell> cells) {
        public Row {
            cells = List.copyOf(cells);
        }

        /** An empty cell beyond the last. */
        public Cell cell(int column) {
            return column < cells.size() ? cells.get(column) : Cell.EMPTY;
        }

        boolean isBlank() {
            return cells.stream().allMatch(Cell::isEmpty);
        }

        /** Whether it is a caution or remark below one of our own tables. */
        public boolean isCaution() {
            return Cautions.isComment(cell(0).text()) || cell(0).text().strip().startsWith(Csv.NOTE.strip());
        }
    }

    public ReadTable {
        rows = rows.stream().filter(row -> !row.isBlank() && !row.isCaution()).toList();
    }

    /** Whether some cell can only be read with a comma as the decimal mark, which then is that of all. */
    public boolean hasDecimalComma() {
        return rows.stream().flatMap(row -> row.cells().stream()).anyMatch(ReadTable::showsDecimalComma);
    }

    /** The same of some columns alone. */
    public boolean hasDecimalComma(Collection<Integer> columns) {
        return rows.stream().flatMap(row -> columns.stream().map(row::cell)).anyMatch(ReadTable::showsDecimalComma);
    }

    private static boolean showsDecimalComma(Cell cell) {
        return cell.kind() == Cell.Kind.TEXT && Amount.showsDecimalComma(cell.text());
    }

    /** The letters of a column, A for 0. */
    public static String letters(int column) {
        return column < 26 ? String.valueOf((char) ('A' + column)) : letters(column / 26 - 1) + letters(column % 26);
    }
}
