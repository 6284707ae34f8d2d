package evenrise.solver.drawing;

import java.util.List;

/**
 * One sheet of a drawing: {@link #WIDTH} by {@link #HEIGHT} millimetres, from its upper left corner, which fit between the
 * margins of A3 and of 11 by 17 inches.
 *
 * @param number from 1, within its drawing
 */
public record Sheet(int number, List<Line> lines, List<Circle> circles, List<Text> texts) {
    public static final double WIDTH = 390;
    public static final double HEIGHT = 232;

    /** @param isHeavy a bus rather than a wire */
    public record Line(double x1, double y1, double x2, double y2, boolean isHeavy) {}

    public record Circle(double x, double y, double radius) {}

    /**
     * @param x its middle
     * @param y its base line
     * @param width that it takes
     * @param size of the font; its capitals are {@link TextWidths#CAPITALS} of that
     */
    public record Text(double x, double y, double width, double size, boolean isBold, String text) {
        public double left() {
            return x - width / 2;
        }

        /** Height of its capitals. */
        public double capitals() {
            return TextWidths.CAPITALS * size;
        }
    }

    public Sheet {
        lines = List.copyOf(lines);
        circles = List.copyOf(circles);
        texts = List.copyOf(texts);
    }
}
