package evenrise.solver.rendering;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A sheet of labels, in millimetres.
 *
 * @param left from the sheet's edge to the first label
 * @param top likewise
 * @param gapAcross between two labels beside each other
 * @param gapDown between two labels one above the other
 */
public record LabelStock(
        double sheetWidth,
        double sheetHeight,
        double labelWidth,
        double labelHeight,
        int columns,
        int rows,
        double left,
        double top,
        double gapAcross,
        double gapDown) {
    /** Sizes that stationers sell, by their millimetres (common practice, no source: hold a print against the stock). */
    public static final Map<String, LabelStock> NAMED = named();

    private static final double LARGEST_SHEET = 1000;
    private static final double LEAST_WIDTH = 15;
    private static final double LEAST_HEIGHT = 8;
    private static final int MOST = 1000;

    /** Of a grid that ends where the sheet ends: rounding of what is printed on a packet. */
    private static final double ROUNDING = 0.2;

    private static final Pattern SIZES = Pattern.compile("(\\d{1,4}(?:\\.\\d{1,3})?)x(\\d{1,4}(?:\\.\\d{1,3})?)");

    /** As it is written: sheet, label, grid, margins, gaps. */
    public static final String FORM = "SHEET:LABEL:COLUMNSxROWS:LEFTxTOP:GAPS";

    private static Map<String, LabelStock> named() {
        Map<String, LabelStock> named = new LinkedHashMap<>();
        named.put("a4-38.1x21.2", new LabelStock(210, 297, 38.1, 21.2, 5, 13, 4.75, 10.7, 2.5, 0));
        named.put("a4-48.5x25.4", new LabelStock(210, 297, 48.5, 25.4, 4, 11, 8, 8.8, 0, 0));
        named.put("a4-63.5x38.1", new LabelStock(210, 297, 63.5, 38.1, 3, 7, 7.25, 15.15, 2.5, 0));
        named.put("a4-70x37", new LabelStock(210, 297, 70, 37, 3, 8, 0, 0.5, 0, 0));
        named.put("a4-99.1x67.7", new LabelStock(210, 297, 99.1, 67.7, 2, 4, 4.65, 13.1, 2.5, 0));
        named.put("letter-66.7x25.4", new LabelStock(215.9, 279.4, 66.675, 25.4, 3, 10, 4.76, 12.7, 3.175, 0));
        named.put("letter-101.6x50.8", new LabelStock(215.9, 279.4, 101.6, 50.8, 2, 5, 4.76, 12.7, 3.18, 0));
        return named;
    }

    /** By its name or in full; empty where it is neither, or does not fit on its sheet. */
    public static Optional<LabelStock> of(String text) {
        return Optional.ofNullable(NAMED.get(text.strip())).or(() -> inFull(text.strip()));
    }

    private static Optional<LabelStock> inFull(String text) {
        List<String> parts = Arrays.asList(text.split(":", -1));
        if (parts.size() != 5
                || !parts.stream().allMatch(part -> SIZES.matcher(part).matches())) {
            return Optional.empty();
        }
        double[][] n = parts.stream()
                .map(part -> Arrays.stream(part.split("x"))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
        if (n[2][0] != Math.rint(n[2][0]) || n[2][1] != Math.rint(n[2][1])) {
            return Optional.empty();
        }
        return Optional.of(new LabelStock(
                        n[0][0],
                        n[0][1],
                        n[1][0],
                        n[1][1],
                        (int) n[2][0],
                        (int) n[2][1],
                        n[3][0],
                        n[3][1],
                        n[4][0],
                        n[4][1]))
                .filter(LabelStock::isSound);
    }

    private boolean isSound() {
        return columns > 0
                && rows > 0
                && columns * rows <= MOST
                && sheetWidth <= LARGEST_SHEET
                && sheetHeight <= LARGEST_SHEET
                && labelWidth >= LEAST_WIDTH
                && labelHeight >= LEAST_HEIGHT
                && left(columns - 1) + labelWidth <= sheetWidth + ROUNDING
                && top(columns * rows - 1) + labelHeight <= sheetHeight + ROUNDING;
    }

    int onASheet() {
        return columns * rows;
    }

    /** @param index of a label on its sheet, row by row */
    double left(int index) {
        return left + (index % columns) * (labelWidth + gapAcross);
    }

    double top(int index) {
        return top + (index / columns) * (labelHeight + gapDown);
    }
}
