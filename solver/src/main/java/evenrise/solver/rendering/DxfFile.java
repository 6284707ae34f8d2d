package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Document;
import evenrise.solver.drawing.Sheet;
import evenrise.solver.drawing.TextWidths;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A drawing for other programs: DXF of release 12, which all of them read, in millimetres, its sheets beside each other.
 * Wires lie on the layer of what they carry, texts and frames on layers of their own. Each text is fitted to the width
 * that it was laid out with, so that none runs into another whatever font draws it. The title block, a block with fields, and
 * the cautions stand below each sheet.
 */
public final class DxfFile {
    /** What release 12 knows beyond ASCII; a sign that it lacks is a question mark. */
    static final Charset CHARACTERS = Charset.forName("windows-1252");

    private static final double BETWEEN_SHEETS = 30;
    private static final double BELOW = 4;

    /** Release 12 holds 255 characters. */
    private static final int LONGEST_TEXT = 250;

    private static final List<String> LAYERS = List.of("power", "control", "text", "frame");

    private final DxfCodes out = new DxfCodes();

    private DxfFile() {}

    /** Each drawing by its id. */
    public static Map<String, byte[]> all(Document document) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        DxfTitleBlock titles = new DxfTitleBlock(document.imprint(), document.headline());
        int before = 0;
        for (DrawnDiagram drawn : DrawnDiagram.all(document)) {
            List<String> numbers = new ArrayList<>();
            for (int i = 0; i < drawn.sheets().size(); i++) {
                before++;
                numbers.add(document.imprint().sheet(SheetSection.DRAWINGS.number(), before));
            }
            files.put(
                    drawn.diagram().id(),
                    new DxfFile()
                            .written(drawn, titles, numbers, document.cautions())
                            .getBytes(CHARACTERS));
        }
        return files;
    }

    private String written(DrawnDiagram drawn, DxfTitleBlock titles, List<String> numbers, List<String> cautions) {
        head();
        for (int i = 0; i < drawn.sheets().size(); i++) {
            Sheet sheet = drawn.sheets().get(i);
            out.begin((sheet.number() - 1) * (Sheet.WIDTH + BETWEEN_SHEETS), Sheet.HEIGHT);
            sheet(drawn, sheet);
            titles.insert(out, drawn.title(sheet), numbers.get(i));
            below(cautions);
        }
        out.pairs("0", "ENDSEC", "0", "EOF");
        return out.toString();
    }

    /** Layers, the font and the title block, up to where the sheets begin. */
    private void head() {
        out.pairs("0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1009", "9", "$DWGCODEPAGE", "3", "ANSI_1252");
        out.pairs("0", "ENDSEC", "0", "SECTION", "2", "TABLES");
        out.pairs("0", "TABLE", "2", "LTYPE", "70", "1");
        out.pairs("0", "LTYPE", "2", "CONTINUOUS", "70", "0", "3", "Solid line", "72", "65", "73", "0", "40", "0.0");
        out.pairs("0", "ENDTAB", "0", "TABLE", "2", "LAYER", "70", String.valueOf(LAYERS.size()));
        for (String layer : LAYERS) {
            out.pairs("0", "LAYER", "2", layer, "70", "0", "62", "7", "6", "CONTINUOUS");
        }
        out.pairs("0", "ENDTAB", "0", "TABLE", "2", "STYLE", "70", "1");
        out.pairs("0", "STYLE", "2", "SHEET", "70", "0", "40", "0.0", "41", "1.0", "50", "0.0", "71", "0", "42", "2.0");
        out.pairs("3", "arial.ttf", "4", "");
        out.pairs("0", "ENDTAB", "0", "ENDSEC", "0", "SECTION", "2", "BLOCKS");
        DxfTitleBlock.define(out);
        out.pairs("0", "ENDSEC", "0", "SECTION", "2", "ENTITIES");
    }

    private void sheet(DrawnDiagram drawn, Sheet sheet) {
        String layer = drawn.diagram().layer();
        sheet.lines().forEach(line -> out.line(layer, line.x1(), line.y1(), line.x2(), line.y2()));
        sheet.circles().forEach(circle -> out.circle(layer, circle.x(), circle.y(), circle.radius()));
        sheet.texts().forEach(text -> out.text(text.left(), text.y(), text.width(), text.capitals(), text.text()));
        out.line("frame", 0, 0, Sheet.WIDTH, 0);
        out.line("frame", Sheet.WIDTH, 0, Sheet.WIDTH, Sheet.HEIGHT);
        out.line("frame", Sheet.WIDTH, Sheet.HEIGHT, 0, Sheet.HEIGHT);
        out.line("frame", 0, Sheet.HEIGHT, 0, 0);
    }

    /** Lines below the title block, none longer than it. */
    private void below(List<String> lines) {
        double y = Sheet.HEIGHT + DxfTitleBlock.HEIGHT;
        for (String each : lines) {
            String cut = Harmless.cut(each, LONGEST_TEXT);
            y += BELOW;
            out.text(0, y, Math.min(Sheet.WIDTH, TextWidths.of(cut, 2.7, false)), 2, cut);
        }
    }
}
