package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Document;
import evenrise.solver.document.Imprint;
import evenrise.solver.drawing.Sheet;
import evenrise.solver.drawing.TextWidths;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A drawing for other programs: DXF of release 12, which all of them read, in millimetres, its sheets beside each other.
 * Wires lie on the layer of what they carry, texts and frames on layers of their own. Each text is fitted to the width
 * that it was laid out with, so that none runs into another whatever font draws it. Imprint and cautions stand below each sheet.
 */
public final class DxfFile {
    /** What release 12 knows beyond ASCII; a sign that it lacks is a question mark. */
    static final Charset CHARACTERS = Charset.forName("windows-1252");

    private static final double BETWEEN_SHEETS = 30;
    private static final double BELOW = 4;

    /** Release 12 holds 255 characters. */
    private static final int LONGEST_TEXT = 250;

    private static final List<String> LAYERS = List.of("power", "control", "text", "frame");

    private final StringBuilder out = new StringBuilder();
    private double left;

    private DxfFile() {}

    /** Each drawing by its id. */
    public static Map<String, byte[]> all(Document document) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (DrawnDiagram drawn : DrawnDiagram.all(document)) {
            files.put(
                    drawn.diagram().id(),
                    new DxfFile()
                            .written(drawn, document.imprint(), document.headline(), document.cautions())
                            .getBytes(CHARACTERS));
        }
        return files;
    }

    private String written(DrawnDiagram drawn, Imprint imprint, String headline, List<String> cautions) {
        pairs("0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1009", "9", "$DWGCODEPAGE", "3", "ANSI_1252");
        pairs("0", "ENDSEC", "0", "SECTION", "2", "TABLES");
        pairs("0", "TABLE", "2", "LTYPE", "70", "1");
        pairs("0", "LTYPE", "2", "CONTINUOUS", "70", "0", "3", "Solid line", "72", "65", "73", "0", "40", "0.0");
        pairs("0", "ENDTAB", "0", "TABLE", "2", "LAYER", "70", String.valueOf(LAYERS.size()));
        for (String layer : LAYERS) {
            pairs("0", "LAYER", "2", layer, "70", "0", "62", "7", "6", "CONTINUOUS");
        }
        pairs("0", "ENDTAB", "0", "TABLE", "2", "STYLE", "70", "1");
        pairs("0", "STYLE", "2", "SHEET", "70", "0", "40", "0.0", "41", "1.0", "50", "0.0", "71", "0", "42", "2.0");
        pairs("3", "arial.ttf", "4", "");
        pairs("0", "ENDTAB", "0", "ENDSEC", "0", "SECTION", "2", "ENTITIES");
        for (Sheet sheet : drawn.sheets()) {
            left = (sheet.number() - 1) * (Sheet.WIDTH + BETWEEN_SHEETS);
            sheet(drawn, sheet);
            List<String> below = new ArrayList<>();
            below.add(drawn.title(sheet) + ". " + imprint.project() + ", revision " + imprint.revision() + ", "
                    + imprint.date() + ", project file " + imprint.shortHash() + ". " + headline);
            below.addAll(cautions);
            below(below);
        }
        pairs("0", "ENDSEC", "0", "EOF");
        return out.toString();
    }

    private void sheet(DrawnDiagram drawn, Sheet sheet) {
        String layer = drawn.diagram().layer();
        sheet.lines().forEach(line -> line(layer, line.x1(), line.y1(), line.x2(), line.y2()));
        for (Sheet.Circle circle : sheet.circles()) {
            pairs("0", "CIRCLE", "8", layer);
            point("10", circle.x(), circle.y());
            pairs("40", number(circle.radius()));
        }
        for (Sheet.Text text : sheet.texts()) {
            text(text.left(), text.y(), text.width(), text.capitals(), text.text());
        }
        line("frame", 0, 0, Sheet.WIDTH, 0);
        line("frame", Sheet.WIDTH, 0, Sheet.WIDTH, Sheet.HEIGHT);
        line("frame", Sheet.WIDTH, Sheet.HEIGHT, 0, Sheet.HEIGHT);
        line("frame", 0, Sheet.HEIGHT, 0, 0);
    }

    /** Lines below the frame, none longer than it. */
    private void below(List<String> lines) {
        double y = Sheet.HEIGHT;
        for (String each : lines) {
            String cut = Harmless.cut(each, LONGEST_TEXT);
            y += BELOW;
            text(0, y, Math.min(Sheet.WIDTH, TextWidths.of(cut, 2.7, false)), 2, cut);
        }
    }

    private void line(String layer, double x1, double y1, double x2, double y2) {
        pairs("0", "LINE", "8", layer);
        point("10", x1, y1);
        point("11", x2, y2);
    }

    /** Fitted between its ends (72: 5), which keeps its height. */
    private void text(double x, double y, double width, double height, String text) {
        pairs("0", "TEXT", "8", "text");
        point("10", x, y);
        pairs("40", number(height), "1", harmless(text), "7", "SHEET", "72", "5");
        point("11", x + width, y);
    }

    /** A line of its own, without the signs that would begin a code. */
    private static String harmless(String text) {
        return Harmless.shown(text).replaceAll("[\\r\\n]", " ").replace("%%", "% %");
    }

    /** Up is positive. */
    private void point(String code, double x, double y) {
        pairs(code, number(left + x), String.valueOf(Integer.parseInt(code) + 10), number(Sheet.HEIGHT - y));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    private void pairs(String... codesAndValues) {
        for (String each : codesAndValues) {
            out.append(each).append("\r\n");
        }
    }
}
