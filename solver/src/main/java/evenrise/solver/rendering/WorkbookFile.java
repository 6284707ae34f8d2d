package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Column;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.Imprint;
import evenrise.solver.table.SteadyZip;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.StyleSetter;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Every table of a plan as a workbook: numbers are numbers, texts are texts and never formulas. */
public final class WorkbookFile {
    private static final MathContext DIGITS = new MathContext(12);
    private static final int LONGEST_SHEET_NAME = 31;
    private static final int SHORTEST_COLUMN = 8;
    private static final int LONGEST_COLUMN = 70;
    private static final String HEADER = "E6ECEF";
    private static final String FONT = "Arial";
    private static final int POINTS = 8;
    private static final int LONGEST_HEADER = 120;
    private static final int LONGEST_IMPRINT = 60;

    private WorkbookFile() {}

    public static byte[] of(Document document) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "evenrise", null)) {
            Worksheet cover = workbook.newWorksheet("cover");
            WorkbookCover.write(cover, document);
            print(cover);
            imprint(cover, document);
            for (DocumentTable<?> table : document.tables().all()) {
                String name = table.id()
                        .substring(0, Math.min(LONGEST_SHEET_NAME, table.id().length()));
                Worksheet sheet = workbook.newWorksheet(name);
                sheet(sheet, table);
                imprint(sheet, document);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return SteadyZip.ofWorkbook(bytes.toByteArray());
    }

    /** An ampersand begins a code in headers and footers, so names go without. */
    private static void imprint(Worksheet sheet, Document document) {
        Imprint imprint = document.imprint();
        sheet.header(plain(document.headline(), LONGEST_HEADER), Position.CENTER, FONT, POINTS);
        sheet.header(plain(imprint.project(), LONGEST_IMPRINT), Position.LEFT, FONT, POINTS);
        sheet.header(
                "revision " + plain(imprint.revision(), LONGEST_IMPRINT) + ", "
                        + plain(imprint.date(), LONGEST_IMPRINT),
                Position.RIGHT,
                FONT,
                POINTS);
        sheet.footer(
                "project file " + imprint.shortHash() + ", evenrise " + imprint.version(), Position.LEFT, FONT, POINTS);
        sheet.footer("page &P of &N", Position.RIGHT, FONT, POINTS);
    }

    /** What a header can hold: no codes, and no more than a line and a half. */
    private static String plain(String text, int longest) {
        return Harmless.cut(Cells.text(text).replace("&", "+"), longest);
    }

    /** As many sheets of paper down as it takes, and one across. */
    private static void print(Worksheet sheet) {
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
    }

    private static <R> void sheet(Worksheet sheet, DocumentTable<R> table) {
        int rows = table.rows().size();
        int columns = table.columns().size();
        List<List<Object>> cells = table.columns().stream()
                .map(column -> Cells.values(table, column))
                .toList();
        for (int i = 0; i < columns; i++) {
            Column<R> column = table.columns().get(i);
            sheet.value(0, i, column.header());
            sheet.style(0, i)
                    .bold()
                    .wrapText(true)
                    .verticalAlignment("top")
                    .fillColor(HEADER)
                    .set();
            sheet.width(i, width(column, cells.get(i)));
        }
        for (int row = 0; row < rows; row++) {
            for (int i = 0; i < columns; i++) {
                if (cells.get(i).get(row) instanceof Number number) {
                    sheet.value(row + 1, i, plain(number));
                } else {
                    sheet.value(
                            row + 1, i, Cells.text(String.valueOf(cells.get(i).get(row))));
                }
            }
        }
        for (int i = 0; i < columns && rows > 0; i++) {
            Column<R> column = table.columns().get(i);
            StyleSetter style =
                    sheet.range(1, i, rows, i).style().wrapText(true).verticalAlignment("top");
            (column.isNumber() ? style.format(format(Cells.decimals(column, cells.get(i)))) : style).set();
        }
        if (rows > 0) {
            sheet.setAutoFilter(0, 0, rows, columns - 1);
        }
        sheet.freezePane(0, 1);
        sheet.repeatRows(0);
        print(sheet);
    }

    /** Without what sums leave in the last digits of a machine's number, which a formula or a copy would show. */
    private static Number plain(Number number) {
        return number instanceof Double it && Double.isFinite(it)
                ? (Number) new BigDecimal(it).round(DIGITS).doubleValue()
                : number;
    }

    /** A workbook has room for two decimals of large currents, too. */
    private static String format(int decimals) {
        return decimals == 0 ? "0" : decimals == 3 ? "0.000" : "0.00";
    }

    /** Of its longest cell, up to what still reads well; a header goes on two lines. */
    private static int width(Column<?> column, List<Object> cells) {
        int header = column.header().length() / 2;
        int cell = column.isNumber()
                ? 0
                : cells.stream()
                        .mapToInt(each -> String.valueOf(each).length())
                        .max()
                        .orElse(0);
        return Math.min(LONGEST_COLUMN, 4 + Math.max(SHORTEST_COLUMN, Math.max(header, cell)));
    }
}
