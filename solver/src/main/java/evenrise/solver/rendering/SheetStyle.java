package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Document;
import evenrise.solver.document.Imprint;
import java.util.List;
import org.dhatim.fastexcel.PaperSize;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.StyleSetter;
import org.dhatim.fastexcel.Worksheet;

/** How sheets of a workbook look and print. */
final class SheetStyle {
    private static final String HEADER = "E6ECEF";
    private static final String FONT = "Arial";
    private static final int POINTS = 8;
    private static final int LONGEST_HEADER = 120;
    private static final int LONGEST_IMPRINT = 60;

    /** What the button of a filter takes of a column. */
    static final int FILTER_BUTTON = 4;

    private static final double LINE_POINTS = 15.5;
    private static final double BOLD = 1.1;

    /** What a letter takes of what a column counts as one, a digit: a line too many is better than one that is cut. */
    private static final double WIDE = 0.95;

    private static final double MOST_POINTS = 400;

    private SheetStyle() {}

    /** Headers with room for all their lines beside the button of a filter. */
    static void header(Worksheet sheet, int row, List<String> headers, List<Integer> widths) {
        int lines = 1;
        for (int i = 0; i < headers.size(); i++) {
            sheet.value(row, i, headers.get(i));
            sheet.width(i, widths.get(i));
            lines = Math.max(lines, lines(headers.get(i), (widths.get(i) - FILTER_BUTTON) / BOLD));
        }
        height(sheet, row, lines);
        header(sheet.range(row, 0, row, headers.size() - 1).style());
    }

    /** Programs do not agree on whether they find it by themselves. */
    static void height(Worksheet sheet, int row, int lines) {
        if (lines > 1) {
            sheet.rowHeight(row, Math.min(MOST_POINTS, lines * LINE_POINTS));
        }
    }

    /** So many does a text take, wrapped at words; a longer word goes on below. */
    static int lines(String text, double width) {
        int lines = 1;
        double used = 0;
        for (String word : text.split(" ")) {
            double length = word.length() * WIDE;
            if (used > 0 && length > width) {
                lines += (int) (length / width);
            }
            if (used > 0 && used + 1 + length > width) {
                lines++;
                used = 0;
            }
            used += (used > 0 ? 1 : 0) + length;
        }
        return lines;
    }

    static void header(StyleSetter style) {
        style.bold().wrapText(true).verticalAlignment("top").fillColor(HEADER).set();
    }

    /** A workbook has room for two decimals of large currents, too. */
    static String format(int decimals) {
        return decimals == 0 ? "0" : decimals == 3 ? "0.000" : "0.00";
    }

    /** As many sheets of paper down as it takes, and one across, on the paper of the project's country. */
    static void print(Worksheet sheet, Document document) {
        sheet.pageOrientation("landscape");
        sheet.paperSize(document.isOnLetter() ? PaperSize.LETTER_PAPER : PaperSize.A4_PAPER);
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
        imprint(sheet, document);
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
}
