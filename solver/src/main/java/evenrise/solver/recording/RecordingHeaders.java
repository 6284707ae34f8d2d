package evenrise.solver.recording;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.intake.RecorderColumns;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** The headers of a recorded table, to be asked for what they mean. */
final class RecordingHeaders {
    private static final int MOST_ROWS = 60;
    private static final int MOST_COLUMNS = 200;
    private static final int MOST_NAMED = 12;

    private RecordingHeaders() {}

    /** Every column with a header; none where there is no row of headers. */
    static List<RecordedColumn> columns(ReadTable table, List<RecorderColumns> said) {
        Optional<RecordingColumns> known = RecordingColumns.in(table, said);
        OptionalInt row = known.isPresent() ? OptionalInt.of(known.get().row()) : row(table);
        if (row.isEmpty()) {
            return List.of();
        }
        ReadTable.Row headers = table.rows().get(row.getAsInt());
        List<RecordedColumn> columns = new ArrayList<>();
        for (int column = 0; column < Math.min(MOST_COLUMNS, headers.cells().size()); column++) {
            if (!headers.cell(column).isEmpty()) {
                int at = column;
                columns.add(new RecordedColumn(
                        headers.cell(column).text(),
                        example(table, row.getAsInt(), column),
                        known.map(each -> each.meaning(at)).orElse("")));
            }
        }
        return columns;
    }

    private static String example(ReadTable table, int row, int column) {
        return table.rows().stream()
                .skip(row + 1L)
                .limit(MOST_ROWS)
                .map(each -> each.cell(column).text())
                .filter(each -> !each.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** The last row of words above the first of values. */
    private static OptionalInt row(ReadTable table) {
        int rows = Math.min(MOST_ROWS, table.rows().size());
        boolean isCommaDecimal = table.hasDecimalComma();
        for (int row = 1; row < rows; row++) {
            if (isOfValues(table.rows().get(row), isCommaDecimal)) {
                return isOfValues(table.rows().get(row - 1), isCommaDecimal)
                        ? OptionalInt.empty()
                        : OptionalInt.of(row - 1);
            }
        }
        return OptionalInt.empty();
    }

    /** Whether two cells and most of those that are filled are numbers or times. */
    private static boolean isOfValues(ReadTable.Row row, boolean isCommaDecimal) {
        long filled = row.cells().stream().filter(each -> !each.isEmpty()).count();
        long values = row.cells().stream()
                .filter(each -> !each.isEmpty())
                .filter(each -> RecordingCsv.seconds(each.text(), isCommaDecimal)
                                .isPresent()
                        || RecordingCsv.amount(each.text(), isCommaDecimal).isPresent())
                .count();
        return values >= 2 && 2 * values > filled;
    }

    /** What is to be said where nothing is recognised, with an example of how. */
    static String question(ReadTable table) {
        List<String> headers = columns(table, List.of()).stream()
                .map(each -> Harmless.shown(each.header()))
                .toList();
        if (headers.size() < 2) {
            return "no row of headers is found with a time and a current. Name the columns time_s (or timestamp) and"
                    + " A, B, C (or L1, L2, L3), as in 'time_s,A,B,C'.";
        }
        String example = Stream.of("--column \"time=" + headers.get(0) + "\"", "--column \"A=" + headers.get(1) + "\"")
                .reduce((a, b) -> a + " " + b)
                .orElseThrow();
        return "which of its columns are the time and the currents is not told by their headers: "
                + Phrase.quoted(headers, MOST_NAMED) + ". Say it once, as in 'evenrise observe … " + example
                + "'; it is kept beside the project.";
    }
}
