package evenrise.solver.intake;

import java.util.List;

/**
 * A sheet of a workbook, or the whole of a text file.
 *
 * @param rows that hold anything, in order
 */
record Sheet(String name, List<Row> rows) {
    /** @param number as the sheet counts, from 1 */
    record Row(int number, List<Cell> cells) {
        Row {
            cells = List.copyOf(cells);
        }

        /** An empty cell beyond the last. */
        Cell cell(int column) {
            return column < cells.size() ? cells.get(column) : Cell.EMPTY;
        }

        boolean isBlank() {
            return cells.stream().allMatch(Cell::isEmpty);
        }
    }

    Sheet {
        rows = List.copyOf(rows);
    }

    /** The letters of a column, A for 0. */
    static String letters(int column) {
        return column < 26 ? String.valueOf((char) ('A' + column)) : letters(column / 26 - 1) + letters(column % 26);
    }
}
