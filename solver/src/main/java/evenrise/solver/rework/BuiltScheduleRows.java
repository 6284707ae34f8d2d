package evenrise.solver.rework;

import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The rows of a panel schedule, found by their headers.
 *
 * @param problems what is missing
 */
record BuiltScheduleRows(List<BuiltScheduleRow> rows, List<String> problems) {
    /** Titles and addresses may stand above the header. */
    private static final int MOST_ROWS_ABOVE = 20;

    static BuiltScheduleRows of(List<ReadTable> tables) {
        BuiltScheduleRows all = new BuiltScheduleRows(new ArrayList<>(), new ArrayList<>());
        tables.forEach(all::add);
        return all;
    }

    private void add(ReadTable table) {
        Map<BuiltScheduleColumn, Integer> columns = Map.of();
        String sheet = table.name().isEmpty() ? "" : "sheet '" + table.name() + "' ";
        int above = 0;
        for (ReadTable.Row row : table.rows()) {
            if (columns.isEmpty()) {
                columns = header(row);
                if (columns.isEmpty() && ++above > MOST_ROWS_ABOVE) {
                    break;
                }
            } else {
                rows.add(row(sheet + "line " + row.number() + ": ", table.name(), row, columns));
            }
        }
        if (columns.isEmpty()) {
            problems.add(sheet + "has no row that names its columns. Name them panel, slot, load, breaker.");
        } else if (!columns.containsKey(BuiltScheduleColumn.PANEL)
                && table.name().isEmpty()) {
            problems.add("the table has no column panel. Add one, or give each panel a sheet of its name.");
        }
    }

    private static Map<BuiltScheduleColumn, Integer> header(ReadTable.Row row) {
        Map<BuiltScheduleColumn, Integer> columns = new EnumMap<>(BuiltScheduleColumn.class);
        for (BuiltScheduleColumn column : BuiltScheduleColumn.values()) {
            // What a load is called in several ways stands under the name that comes first in the column's own list.
            for (int name = 0; name < column.names(); name++) {
                for (int i = 0; i < row.cells().size(); i++) {
                    if (column.isNamed(name, row.cell(i).text())) {
                        columns.putIfAbsent(column, i);
                    }
                }
            }
        }
        boolean isHeader =
                columns.containsKey(BuiltScheduleColumn.SLOT) && columns.containsKey(BuiltScheduleColumn.LOAD);
        return isHeader ? columns : Map.of();
    }

    private static BuiltScheduleRow row(
            String place, String sheet, ReadTable.Row row, Map<BuiltScheduleColumn, Integer> columns) {
        String panel = cell(row, columns, BuiltScheduleColumn.PANEL);
        String control = cell(row, columns, BuiltScheduleColumn.CONTROL);
        String board = cell(row, columns, BuiltScheduleColumn.BOARD);
        String output = cell(row, columns, BuiltScheduleColumn.OUTPUT);
        return new BuiltScheduleRow(
                place,
                panel.isEmpty() ? sheet : panel,
                cell(row, columns, BuiltScheduleColumn.SLOT),
                cell(row, columns, BuiltScheduleColumn.LOAD),
                cell(row, columns, BuiltScheduleColumn.BREAKER),
                cell(row, columns, BuiltScheduleColumn.POLES),
                control.isEmpty() && !board.isEmpty() && !output.isEmpty() ? board + " output " + output : control,
                cell(row, columns, BuiltScheduleColumn.START_DELAY),
                cell(row, columns, BuiltScheduleColumn.STEP));
    }

    private static String cell(
            ReadTable.Row row, Map<BuiltScheduleColumn, Integer> columns, BuiltScheduleColumn column) {
        return columns.containsKey(column) ? row.cell(columns.get(column)).text() : "";
    }
}
