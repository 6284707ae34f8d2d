package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Plain;
import evenrise.solver.document.Slope;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleBinaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Figures as parts of their limits, before on the left and now on the right: a line each, and the limit across. */
final class SlopeSvg {
    private static final int WIDTH = 720;
    private static final int LEFT = 290;
    private static final int RIGHT = 430;
    private static final int TOP = 26;
    private static final int ROW = 15;
    private static final int BOTTOM = 10;
    private static final double LIMIT = 100;
    /** From where on the scale reaches up to the limit. */
    private static final double NEAR_THE_LIMIT = 60;

    private static final double ROOM = 0.06;
    private static final int LONGEST_PLACE = 14;
    private static final int LONGEST_FIGURE = 34;

    private final List<Slope> slopes;
    private final int height;
    private final double most;
    private final double least;
    private final StringBuilder svg = new StringBuilder();

    private SlopeSvg(List<Slope> slopes) {
        this.slopes = slopes;
        this.height = TOP + BOTTOM + ROW * Math.max(8, slopes.size() + 2);
        double greatest = extreme(Math::max);
        double smallest = extreme(Math::min);
        double room = Math.max(1, ROOM * (greatest - smallest));
        this.most = greatest > NEAR_THE_LIMIT ? Math.max(greatest, LIMIT) + room : greatest + room;
        this.least = Math.max(0, smallest - room);
    }

    /** Empty where nothing moved. */
    static String of(List<Slope> slopes) {
        return slopes.isEmpty() ? "" : new SlopeSvg(slopes).draw();
    }

    private double extreme(DoubleBinaryOperator of) {
        return slopes.stream()
                .mapToDouble(each -> of.applyAsDouble(each.percentBefore(), each.percentNow()))
                .reduce(of)
                .orElse(0);
    }

    private String draw() {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"slopes\" role=\"img\" viewBox=\"0 0 %d %d\" width=\"%d\""
                        + " height=\"%d\" font-size=\"10.5\"><title>Figures as parts of their limits: before on the left,"
                        + " now on the right</title>",
                WIDTH, height, WIDTH, height);
        add(
                "<text x=\"%d\" y=\"12\" text-anchor=\"end\" font-weight=\"bold\">Before, %% of the limit</text><text"
                        + " x=\"%d\" y=\"12\" font-weight=\"bold\">Now, %% of the limit</text>",
                LEFT, RIGHT);
        add(
                "<path d=\"M%d %dV%dM%d %dV%d\" stroke=\"#888888\" fill=\"none\"/>",
                LEFT, TOP - 4, height - BOTTOM + 4, RIGHT, TOP - 4, height - BOTTOM + 4);
        limit();
        List<Double> before = apart(Slope::percentBefore);
        List<Double> now = apart(Slope::percentNow);
        for (int i = 0; i < slopes.size(); i++) {
            slope(slopes.get(i), before.get(i), now.get(i));
        }
        return svg.append("</svg>").toString();
    }

    /** Where it lies beyond the scale, that is said. */
    private void limit() {
        if (most < LIMIT) {
            add(
                    "<text x=\"%d\" y=\"12\" text-anchor=\"middle\" font-size=\"9\">limit: 100, above</text>",
                    (LEFT + RIGHT) / 2);
            return;
        }
        add(
                "<path class=\"limit\" d=\"M%d %.1fH%d\" stroke=\"#8c1d18\" stroke-width=\"1.2\" stroke-dasharray=\"6 3\""
                        + " fill=\"none\"/><text x=\"%d\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"9\">limit</text>",
                LEFT - 6, y(LIMIT), RIGHT + 6, (LEFT + RIGHT) / 2, y(LIMIT) - 3);
    }

    /** What gets tighter is dark and thick, what gets looser thin. */
    private void slope(Slope slope, double before, double now) {
        double from = y(slope.percentBefore());
        double to = y(slope.percentNow());
        add(
                "<path d=\"M%d %.1fL%d %.1f\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"/><circle cx=\"%d\" cy=\"%.1f\""
                        + " r=\"2.2\" fill=\"%s\"/><circle cx=\"%d\" cy=\"%.1f\" r=\"2.2\" fill=\"%s\"/>",
                LEFT,
                from,
                RIGHT,
                to,
                colour(slope),
                slope.isTighter() ? "2.6" : "1.2",
                LEFT,
                from,
                colour(slope),
                RIGHT,
                to,
                colour(slope));
        String name = name(slope);
        label(LEFT, -1, from, before, String.format(Locale.ROOT, "%s  %.1f", name, slope.percentBefore()));
        label(RIGHT, 1, to, now, String.format(Locale.ROOT, "%.1f  %s", slope.percentNow(), name));
    }

    private void label(int x, int side, double at, double shown, String text) {
        add(
                "<path d=\"M%d %.1fL%d %.1f\" stroke=\"#888888\" stroke-width=\"0.6\" fill=\"none\"/><text x=\"%d\""
                        + " y=\"%.1f\" text-anchor=\"%s\">%s</text>",
                x + 3 * side, at, x + 14 * side, shown, x + 17 * side, shown + 3.6, side < 0 ? "end" : "start", text);
    }

    private static String name(Slope slope) {
        return escaped(Harmless.cut(Plain.text(slope.place(), LONGEST_PLACE), LONGEST_PLACE)) + ", "
                + escaped(Harmless.cut(slope.figure(), LONGEST_FIGURE));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static String colour(Slope slope) {
        return slope.isTighter() ? "#8c1d18" : "#3d6b80";
    }

    /** Where the text of each stands: in the order of the figures, a row apart at least. */
    private List<Double> apart(ToDoubleFunction<Slope> percent) {
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, slopes.size()).boxed().toList());
        order.sort(
                (a, b) -> Double.compare(percent.applyAsDouble(slopes.get(b)), percent.applyAsDouble(slopes.get(a))));
        double[] at = new double[slopes.size()];
        double next = TOP + 4.0;
        for (int i : order) {
            at[i] = Math.max(next, y(percent.applyAsDouble(slopes.get(i))));
            next = at[i] + ROW;
        }
        double last = height - BOTTOM;
        for (int k = order.size() - 1; k >= 0; k--) {
            at[order.get(k)] = Math.min(at[order.get(k)], last);
            last = at[order.get(k)] - ROW;
        }
        return IntStream.range(0, at.length).mapToObj(i -> at[i]).toList();
    }

    private double y(double percent) {
        return TOP + (height - TOP - BOTTOM) * (most - percent) / (most - least);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
