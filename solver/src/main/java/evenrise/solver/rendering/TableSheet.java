package evenrise.solver.rendering;

import evenrise.solver.document.Column;
import evenrise.solver.document.DocumentTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.dhatim.fastexcel.BorderSide;
import org.dhatim.fastexcel.StyleSetter;
import org.dhatim.fastexcel.Table;
import org.dhatim.fastexcel.Worksheet;

/**
 * One table of a document on a sheet of its own: a table with filters, its totals below it, so that sorting leaves them
 * where they are.
 */
final class TableSheet<R> {
    private static final int SHORTEST_COLUMN = 8;
    private static final int LONGEST_COLUMN = 70;
    private static final int FILTER_BUTTON = SheetStyle.FILTER_BUTTON;
    private static final Pattern KEY = Pattern.compile("\\[(\\w+)(:above|@\\d+)?\\]");

    private final CalculatedWorkbook workbook;
    private final Worksheet sheet;
    private final DocumentTable<R> table;
    private final List<Column<R>> columns;
    private final List<List<Object>> cells = new ArrayList<>();

    private TableSheet(CalculatedWorkbook workbook, Worksheet sheet, DocumentTable<R> table) {
        this.workbook = workbook;
        this.sheet = sheet;
        this.table = table;
        this.columns = table.allColumns();
        columns.forEach(column -> cells.add(Cells.values(table, column)));
    }

    static <R> void write(CalculatedWorkbook workbook, Worksheet sheet, DocumentTable<R> table) {
        new TableSheet<>(workbook, sheet, table).write();
    }

    private void write() {
        int last = columns.size() - 1;
        List<Integer> widths = IntStream.rangeClosed(0, last)
                .mapToObj(i -> width(columns.get(i), cells.get(i)))
                .toList();
        SheetStyle.header(sheet, 0, columns.stream().map(Column::header).toList(), widths);
        for (int row = 0; row < table.rows().size(); row++) {
            for (int i = 0; i <= last; i++) {
                cell(row, i);
            }
            int at = row;
            SheetStyle.height(
                    sheet,
                    row + 1,
                    IntStream.rangeClosed(0, last)
                            .map(i -> SheetStyle.lines(shown(cells.get(i).get(at)), widths.get(i)))
                            .max()
                            .orElse(1));
        }
        format();
        int listed = (int) table.rows().stream().filter(row -> !isTotal(row)).count();
        if (listed > 0) {
            Table filtered = sheet.range(0, 0, listed, last)
                    .createTable(columns.stream().map(Column::header).toArray(String[]::new));
            filtered.setName(table.id() + "_table").setDisplayName(table.id() + "_table");
            filtered.styleInfo().setStyleName("TableStyleLight1").setShowRowStripes(false);
            for (int i = 0; i <= last; i++) {
                CalculatedWorkbook.name(sheet, 1, listed, i, name(table, columns.get(i)));
            }
        }
        for (int row = listed; row < table.rows().size(); row++) {
            sheet.range(row + 1, 0, row + 1, last)
                    .style()
                    .bold()
                    .borderStyle(BorderSide.TOP, "thin")
                    .set();
            for (int i = 0; i <= last && row == table.rows().size() - 1; i++) {
                if (!columns.get(i).formulaOf(table.rows().get(row)).isEmpty()) {
                    workbook.name(sheet, row + 1, i, name(table, columns.get(i)) + "_total");
                }
            }
        }
        sheet.freezePane(0, 1);
        sheet.repeatRows(0);
    }

    /** By which formulas anywhere in the workbook find a column: {@code circuits_running}. */
    static String name(DocumentTable<?> table, Column<?> column) {
        return table.id() + "_" + column.field();
    }

    private boolean isTotal(R row) {
        return columns.stream()
                .map(column -> column.formulaOf(row))
                .anyMatch(by -> by.contains(":above]") || by.contains("@"));
    }

    private void cell(int row, int column) {
        Object value = cells.get(column).get(row);
        String formula = columns.get(column).formulaOf(table.rows().get(row));
        if (!formula.isEmpty()) {
            workbook.formula(sheet, row + 1, column, expression(formula, row), value);
        } else if (value instanceof Number number) {
            sheet.value(row + 1, column, CalculatedWorkbook.plain(number));
        } else {
            sheet.value(row + 1, column, Cells.text(String.valueOf(value)));
        }
    }

    private String expression(String formula, int row) {
        return KEY.matcher(formula).replaceAll(found -> {
            int column = IntStream.range(0, columns.size())
                    .filter(i -> columns.get(i).key().equals(found.group(1)))
                    .findFirst()
                    .orElseThrow();
            return Matcher.quoteReplacement(cells(found.group(2), row, column));
        });
    }

    /** @param which as it stands behind the column's key; null for the row's own */
    private static String cells(String which, int row, int column) {
        if (which == null) {
            return CalculatedWorkbook.cell(row + 1, column);
        }
        return which.startsWith("@")
                ? CalculatedWorkbook.cell(Integer.parseInt(which.substring(1)) + 1, column)
                : CalculatedWorkbook.range(1, row, column);
    }

    /** Numbers never wrap. */
    private static String shown(Object value) {
        return value instanceof Number ? "" : Cells.text(String.valueOf(value));
    }

    private void format() {
        int rows = table.rows().size();
        for (int i = 0; i < columns.size() && rows > 0; i++) {
            StyleSetter style =
                    sheet.range(1, i, rows, i).style().wrapText(true).verticalAlignment("top");
            (columns.get(i).isNumber()
                            ? style.format(SheetStyle.format(Cells.decimals(columns.get(i), cells.get(i))))
                            : style)
                    .set();
        }
    }

    /** Of its longest cell, up to what still reads well; a header goes on two lines, and no word of it is cut. */
    private static int width(Column<?> column, List<Object> cells) {
        int word = Arrays.stream(column.header().split("[ -]"))
                .mapToInt(String::length)
                .max()
                .orElse(0);
        int header = Math.max(word, column.header().length() / 2) + FILTER_BUTTON;
        int cell = column.isNumber()
                ? 0
                : FILTER_BUTTON
                        + cells.stream()
                                .mapToInt(each -> String.valueOf(each).length())
                                .max()
                                .orElse(0);
        return Math.min(LONGEST_COLUMN, Math.max(SHORTEST_COLUMN, Math.max(header, cell)));
    }
}
