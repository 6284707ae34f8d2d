package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A drawing for other programs as a picture, read from the bytes of the file itself. It knows the parts that {@link DxfFile}
 * writes: lines, circles, texts that are fitted between two points, and one block with fields.
 */
public final class DxfPicture {
    /** Capitals of Arial by its size (from memory; the text's width is given by the file). */
    private static final double CAPITALS = 0.716;

    private static final double MARGIN = 5;

    /** An entity with its values by their codes. */
    private record Part(String kind, Map<Integer, String> values) {}

    private final StringBuilder parts = new StringBuilder();
    private final List<Part> block = new ArrayList<>();
    private boolean isInBlock;
    private double blockLeft;
    private double blockBottom;
    private double left = Double.MAX_VALUE;
    private double right = -Double.MAX_VALUE;
    private double top = Double.MAX_VALUE;
    private double bottom = -Double.MAX_VALUE;

    private DxfPicture() {}

    /** As SVG, in millimetres. */
    public static String of(byte[] file) {
        DxfPicture picture = new DxfPicture();
        List<String> lines = new String(file, DxfFile.CHARACTERS).lines().toList();
        String kind = "";
        Map<Integer, String> values = new HashMap<>();
        for (int i = 0; i + 1 < lines.size(); i += 2) {
            int code = Integer.parseInt(lines.get(i).strip());
            if (code == 0) {
                picture.read(new Part(kind, Map.copyOf(values)));
                kind = lines.get(i + 1);
                values.clear();
            } else {
                values.put(code, lines.get(i + 1));
            }
        }
        return picture.drawn();
    }

    /** What stands in the block is drawn where the block is. */
    private void read(Part part) {
        switch (part.kind()) {
            case "BLOCK" -> isInBlock = true;
            case "ENDBLK" -> isInBlock = false;
            case "INSERT" -> {
                blockLeft = number(part.values(), 10);
                blockBottom = number(part.values(), 20);
                block.forEach(this::add);
                blockLeft = 0;
                blockBottom = 0;
            }
            default -> {
                if (isInBlock) {
                    block.add(part);
                } else {
                    add(part);
                }
            }
        }
    }

    private void add(Part part) {
        Map<Integer, String> values = part.values();
        switch (part.kind()) {
            case "LINE" ->
                append(
                        "<line x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\"/>",
                        across(values, 10), down(values, 20), across(values, 11), down(values, 21));
            case "CIRCLE" ->
                append(
                        "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\"/>",
                        across(values, 10), down(values, 20), number(values, 40));
            case "TEXT", "ATTRIB" ->
                append(
                        "<text x=\"%.2f\" y=\"%.2f\" textLength=\"%.2f\" font-size=\"%.2f\" fill=\"#191d21\" stroke=\"none\""
                                + " lengthAdjust=\"spacingAndGlyphs\">%s</text>",
                        across(values, 10),
                        down(values, 20),
                        across(values, 11) - across(values, 10),
                        number(values, 40) / CAPITALS,
                        Harmless.xml(values.get(1)));
            default -> {
                // Sections and tables draw nothing.
            }
        }
    }

    private double across(Map<Integer, String> values, int code) {
        double x = blockLeft + number(values, code);
        left = Math.min(left, x);
        right = Math.max(right, x);
        return x;
    }

    /** Down is positive in a picture, up in the file. */
    private double down(Map<Integer, String> values, int code) {
        double y = -blockBottom - number(values, code);
        top = Math.min(top, y);
        bottom = Math.max(bottom, y);
        return y;
    }

    private static double number(Map<Integer, String> values, int code) {
        return Double.parseDouble(values.get(code));
    }

    private void append(String pattern, Object... values) {
        parts.append(String.format(Locale.ROOT, pattern, values));
    }

    private String drawn() {
        double wide = right - left + 2 * MARGIN;
        double high = bottom - top + 2 * MARGIN;
        return String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\" viewBox=\"%.2f %.2f %.2f"
                                + " %.2f\" stroke=\"#191d21\" stroke-width=\".3\" fill=\"none\" font-family=\"Arial, Helvetica,"
                                + " Liberation Sans, sans-serif\">",
                        wide * 4,
                        high * 4,
                        left - MARGIN,
                        top - MARGIN,
                        wide,
                        high)
                + String.format(
                        Locale.ROOT,
                        "<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"#fff\" stroke=\"none\"/>",
                        left - MARGIN,
                        top - MARGIN,
                        wide,
                        high)
                + parts
                + "</svg>";
    }
}
