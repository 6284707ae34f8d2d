package evenrise.solver.observation;

import evenrise.model.contract.Decimals;
import java.util.List;

/** Statements by how sure they are: the part that is right, over what samples of statements as sure as they say come to. */
final class ReliabilityFigure {
    private static final double SIDE = 300;
    private static final double LEFT = 60;
    private static final double TOP = 46;

    private ReliabilityFigure() {}

    /** @param rare part of samples that lie outside the bars */
    static String of(List<Reliability.Bin> bins, double rare, int plants) {
        StringBuilder svg = new StringBuilder(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 560 410\""
                        + " font-family=\"sans-serif\" font-size=\"12\">\n<rect width=\"560\" height=\"410\" fill=\"#ffffff\"/>\n");
        text(svg, 16, 24, "Right beside sure: faults planted anywhere in " + plants + " drawn plants");
        for (int tick = 0; tick <= 10; tick += 2) {
            double part = tick / 10.0;
            line(svg, x(part), y(0), x(part), y(1), "#e3e3e3");
            line(svg, x(0), y(part), x(1), y(part), "#e3e3e3");
            text(svg, x(part) - 10, y(0) + 18, 10 * tick + " %");
            text(svg, x(0) - 42, y(part) + 4, 10 * tick + " %");
        }
        line(svg, x(0), y(0), x(1), y(1), "#777777");
        text(svg, x(0.5) - 50, y(0) + 38, "said to be sure");
        text(svg, 10, TOP - 6, "right");
        double row = TOP + 20;
        text(svg, 385, TOP, "sure, right of statements");
        for (Reliability.Bin bin : bins) {
            double at = x(bin.stated());
            line(svg, at, y(bin.limit(true, rare)), at, y(bin.limit(false, rare)), "#0b5f7d");
            svg.append("<circle cx=\"" + number(at) + "\" cy=\"" + number(y((double) bin.right() / bin.count()))
                    + "\" r=\"4\" fill=\"#b5461e\"/>\n");
            text(svg, 385, row, percent(bin.stated()) + ", " + bin.right() + " of " + bin.count());
            row += 18;
        }
        text(svg, 385, row + 14, "Dot: what was right.");
        text(svg, 385, row + 32, "Bar: what chance leaves,");
        text(svg, 385, row + 48, "all but one in " + Math.round(1 / rare) + " samples.");
        return svg.append("</svg>\n").toString();
    }

    private static double x(double part) {
        return LEFT + SIDE * part;
    }

    private static double y(double part) {
        return TOP + SIDE * (1 - part);
    }

    private static String percent(double part) {
        return Decimals.fixed(100 * part, 1) + " %";
    }

    private static String number(double value) {
        return Decimals.fixed(value, 1);
    }

    private static void line(StringBuilder svg, double x1, double y1, double x2, double y2, String colour) {
        svg.append("<line x1=\"" + number(x1) + "\" y1=\"" + number(y1) + "\" x2=\"" + number(x2) + "\" y2=\""
                + number(y2) + "\" stroke=\"" + colour + "\" stroke-width=\"2\"/>\n");
    }

    private static void text(StringBuilder svg, double x, double y, String words) {
        svg.append("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" fill=\"#222222\">" + words + "</text>\n");
    }
}
