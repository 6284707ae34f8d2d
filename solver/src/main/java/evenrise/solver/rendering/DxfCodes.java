package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import java.util.Locale;

/** Codes and values of a drawing's file, in millimetres from a corner on the left; down is positive here, up in the file. */
final class DxfCodes {
    private final StringBuilder out = new StringBuilder();
    private double left;
    private double top;

    /** What follows is counted from there. */
    void begin(double left, double top) {
        this.left = left;
        this.top = top;
    }

    void pairs(String... codesAndValues) {
        for (String each : codesAndValues) {
            out.append(each).append("\r\n");
        }
    }

    void line(String layer, double x1, double y1, double x2, double y2) {
        pairs("0", "LINE", "8", layer);
        point("10", x1, y1);
        point("11", x2, y2);
    }

    void circle(String layer, double x, double y, double radius) {
        pairs("0", "CIRCLE", "8", layer);
        point("10", x, y);
        pairs("40", number(radius));
    }

    /** Fitted between its ends, which keeps its height. */
    void text(double x, double y, double width, double height, String text) {
        fitted("TEXT", x, y, width, height, text);
        ends(x, y, width);
    }

    /** What a block asks for, with how it is asked for. */
    void asked(String tag, String prompt, double x, double y, double width, double height) {
        fitted("ATTDEF", x, y, width, height, "");
        pairs("3", harmless(prompt), "2", tag, "70", "0");
        ends(x, y, width);
    }

    /** What stands there in one place of a block. */
    void field(String tag, String value, double x, double y, double width, double height) {
        fitted("ATTRIB", x, y, width, height, value);
        pairs("2", tag, "70", "0");
        ends(x, y, width);
    }

    private void fitted(String kind, double x, double y, double width, double height, String text) {
        pairs("0", kind, "8", "text");
        point("10", x, y);
        pairs("40", number(height), "1", harmless(text), "7", "SHEET");
    }

    /** The second end, and that the text lies between both (72: 5). */
    private void ends(double x, double y, double width) {
        pairs("72", "5");
        point("11", x + width, y);
    }

    void point(String code, double x, double y) {
        pairs(code, number(left + x), String.valueOf(Integer.parseInt(code) + 10), number(top - y));
    }

    /** A line of its own, without the signs that would begin a code. */
    private static String harmless(String text) {
        return Harmless.shown(text).replaceAll("[\\r\\n]", " ").replace("%%", "% %");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
