package evenrise.solver.app;

import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * A table of a written file, read back from its bytes to be looked at.
 *
 * @param name of the sheet; empty where the file is one table
 * @param rows the first of them, cell by cell
 * @param all how many rows there are
 * @since 0.1.0
 */
public record ShownSheet(String name, List<List<String>> rows, int all) {
    private static final int MOST_ROWS = 300;
    private static final int MOST_CELLS = 2_000_000;

    public ShownSheet {
        rows = List.copyOf(rows);
    }

    static List<ShownSheet> of(String file, byte[] bytes) {
        try {
            if (file.endsWith(".csv")) {
                return List.of(
                        of(TextTable.of(TextTable.decoded(bytes), MOST_CELLS).table()));
            }
            return file.endsWith(".xlsx")
                    ? TableFileReader.workbook(bytes).stream()
                            .map(ShownSheet::of)
                            .toList()
                    : List.of();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ShownSheet of(ReadTable table) {
        return new ShownSheet(
                table.name(),
                table.rows().stream()
                        .limit(MOST_ROWS)
                        .map(row -> row.cells().stream().map(ShownSheet::text).toList())
                        .toList(),
                table.rows().size());
    }

    /** What a spreadsheet computes once it is opened is not there yet. */
    private static String text(Cell cell) {
        return cell.kind() == Cell.Kind.FORMULA && cell.text().isEmpty() ? "=" : cell.text();
    }
}
