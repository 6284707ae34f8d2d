package evenrise.solver.commissioning;

import evenrise.model.contract.Harmless;
import evenrise.solver.rework.MeasuredColumn;
import evenrise.solver.table.Cell;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * One table of a file, with its columns by their headers.
 *
 * @param name as messages call it: file, and sheet where it has several
 * @param rows below the header
 */
record FilledSheet(
        String name, Kind kind, Map<String, Integer> columns, List<ReadTable.Row> rows, boolean isCommaDecimal) {
    /** What a table is about. */
    enum Kind {
        LOADS,
        PLACES,
        DEVICES,
        METERS
    }

    /** A header stands among so many rows; above it somebody may have written what the sheet is. */
    private static final int MOST_ABOVE = 20;

    private static final List<String> SITE_COLUMNS = List.of(
            "idle measured a",
            "running measured a",
            "peak measured a",
            "on measured s",
            "off measured s",
            "idle measured",
            "peak measured",
            "on measured",
            "off measured");

    /** Empty for a table that is none of ours and no list of readings. */
    static Optional<FilledSheet> of(String name, ReadTable table, boolean isAlone) {
        List<ReadTable.Row> rows = table.rows();
        for (int i = 0; i < Math.min(MOST_ABOVE, rows.size()); i++) {
            Map<String, Integer> columns = columns(rows.get(i));
            Optional<Kind> kind = kind(columns, isAlone);
            if (kind.isPresent()) {
                List<ReadTable.Row> below = rows.subList(i + 1, rows.size());
                return Optional.of(new FilledSheet(
                        name,
                        kind.get(),
                        columns,
                        below,
                        new ReadTable(table.name(), below).hasDecimalComma(List.copyOf(columns.values()))));
            }
        }
        return Optional.empty();
    }

    private static Map<String, Integer> columns(ReadTable.Row row) {
        Map<String, Integer> columns = new LinkedHashMap<>();
        for (int i = 0; i < row.cells().size(); i++) {
            if (!row.cell(i).isEmpty()) {
                columns.putIfAbsent(HeaderWords.plain(row.cell(i).text()), i);
            }
        }
        return columns;
    }

    private static Optional<Kind> kind(Map<String, Integer> columns, boolean isAlone) {
        boolean isOfLoads = columns.containsKey("load");
        if (isOfLoads && SITE_COLUMNS.stream().anyMatch(columns::containsKey)) {
            return Optional.of(Kind.LOADS);
        }
        if (columns.containsKey("protects")
                && (columns.containsKey("leakage measured ma") || columns.containsKey("leakage"))) {
            return Optional.of(Kind.DEVICES);
        }
        if (columns.containsKey("meter")
                && (columns.containsKey("range a") || columns.containsKey("range"))
                && !isOfLoads) {
            return Optional.of(Kind.METERS);
        }
        boolean isOfPlaces = columns.containsKey("panel") || columns.containsKey("place");
        if (isOfPlaces && !isOfLoads && columns.keySet().stream().anyMatch(FilledSheet::isOfAPlace)) {
            return Optional.of(Kind.PLACES);
        }
        // A plan's own table of circuits has slots and running currents, too: those were not read.
        boolean isList = isAlone
                && !columns.containsKey("slots")
                && isHeaded(columns, MeasuredColumn.LOAD)
                && (isHeaded(columns, MeasuredColumn.RUNNING) || isHeaded(columns, MeasuredColumn.IDLE));
        return isList ? Optional.of(Kind.LOADS) : Optional.empty();
    }

    private static boolean isOfAPlace(String header) {
        return header.matches(
                "(idle|running|peak) measured [abc]( a)?|measured [abc] to neutral v|voltage [abc]|(phase )?rotation");
    }

    private static boolean isHeaded(Map<String, Integer> columns, MeasuredColumn column) {
        return Stream.of(column)
                .flatMap(each -> each.names().stream())
                .anyMatch(each -> columns.containsKey(HeaderWords.plain(each)));
    }

    /** Where one of these headers stands. */
    OptionalInt column(String... headers) {
        return Stream.of(headers)
                .filter(columns::containsKey)
                .mapToInt(columns::get)
                .findFirst();
    }

    /** Where a column stands, by any of its names: in words, as a key, or as in a list of readings. */
    OptionalInt column(MeasuredColumn or, String... headers) {
        List<String> names = new ArrayList<>(List.of(headers));
        or.names().forEach(each -> names.add(HeaderWords.plain(each)));
        return column(names.toArray(String[]::new));
    }

    static Cell cell(ReadTable.Row row, OptionalInt column) {
        return column.isPresent() ? row.cell(column.getAsInt()) : Cell.EMPTY;
    }

    String text(ReadTable.Row row, String... headers) {
        return cell(row, column(headers)).text();
    }

    /** Where a row stands, for messages. */
    String at(ReadTable.Row row) {
        return name + " line " + row.number();
    }

    /** Headers of filled columns that are not among these: what is in them is not lost, but not read either. */
    List<String> unread(TreeSet<String> read) {
        List<String> unread = new ArrayList<>();
        columns.forEach((header, column) -> {
            boolean isFilled = rows.stream().anyMatch(row -> !row.cell(column).isEmpty());
            if (isFilled && !read.contains(header)) {
                unread.add(Harmless.shown(header));
            }
        });
        return unread;
    }
}
