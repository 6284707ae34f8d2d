package evenrise.solver.report;

import evenrise.model.contract.Harmless;
import evenrise.model.plan.Cautions;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.UnbeatenScenarios;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Price against peak, time as the size of the mark, as an SVG that stands by itself. */
public final class CompareChart {
    private static final int WIDTH = 820;
    private static final int HEIGHT = 460;
    private static final int LEFT = 76;
    private static final int RIGHT = 24;
    private static final int TOP = 56;
    private static final int BOTTOM = 56;
    private static final int TICKS = 5;
    private static final int LINE = 14;

    private final List<String> small;
    private final List<ScenarioResult> sound;
    private final List<ScenarioResult> front;
    private final StringBuilder svg = new StringBuilder();
    private final Axis price;
    private final Axis peak;

    private CompareChart(Stream<String> smallPrint, List<ScenarioResult> findings) {
        small = smallPrint.flatMap(each -> Wrap.lines("", each).stream()).toList();
        sound = findings.stream().filter(ScenarioResult::isSound).toList();
        front = UnbeatenScenarios.of(findings);
        price = Axis.around(
                sound.stream()
                        .mapToDouble(each -> each.scenario().price())
                        .min()
                        .orElse(0),
                sound.stream()
                        .mapToDouble(each -> each.scenario().price())
                        .max()
                        .orElse(1));
        peak = Axis.around(
                sound.stream()
                        .mapToDouble(each -> each.metrics().peakInrushAmps())
                        .min()
                        .orElse(0),
                sound.stream()
                        .mapToDouble(each -> each.metrics().peakInrushAmps())
                        .max()
                        .orElse(1));
    }

    /** @param basis what stands with the prices, in sentences */
    public static String svg(String project, String currency, List<String> basis, List<ScenarioResult> findings) {
        return new CompareChart(Stream.concat(basis.stream(), Cautions.ALL.stream()), findings)
                .draw(Harmless.xml(project), Harmless.xml(currency));
    }

    /** The same without exclusions and cautions, to stand in a page that has them. */
    static String inner(String project, String currency, List<ScenarioResult> findings) {
        return new CompareChart(Stream.empty(), findings).draw(Harmless.xml(project), Harmless.xml(currency));
    }

    private String draw(String project, String currency) {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\""
                        + " font-size=\"12\">\n",
                WIDTH, HEIGHT + LINE * (small.size() + 1));
        add(
                "<title>Price against peak inrush: %s</title>\n<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>\n",
                project, WIDTH, HEIGHT + LINE * (small.size() + 1));
        add(
                "<text x=\"%d\" y=\"22\" font-size=\"15\" font-weight=\"bold\">%s: price against peak inrush</text>\n",
                LEFT, project);
        add(
                "<text x=\"%d\" y=\"40\" fill=\"#444\">Numbered as in the table: no other plan is better at once in"
                        + " price, peak and time. A larger mark is a longer sequence.</text>\n",
                LEFT);
        for (double tick : price.ticks()) {
            double x = x(tick);
            add("<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\" stroke=\"#e3e3e3\"/>\n", x, x, TOP, HEIGHT - BOTTOM);
            add(
                    "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\">%s</text>\n",
                    x, HEIGHT - BOTTOM + 18, price.label(tick));
        }
        for (double tick : peak.ticks()) {
            double y = y(tick);
            add("<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"#e3e3e3\"/>\n", LEFT, WIDTH - RIGHT, y, y);
            add("<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%s</text>\n", LEFT - 8, y + 4, peak.label(tick));
        }
        add(
                "<text x=\"%d\" y=\"%d\" text-anchor=\"middle\">price, %s</text>\n",
                (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 14, currency);
        add(
                "<text transform=\"translate(18 %d) rotate(-90)\" text-anchor=\"middle\">peak inrush at nominal"
                        + " voltage, A</text>\n",
                (TOP + HEIGHT - BOTTOM) / 2);
        sound.stream().filter(each -> !front.contains(each)).forEach(each -> mark(each, false));
        front.forEach(each -> mark(each, true));
        smallPrint();
        return svg.append("</svg>\n").toString();
    }

    private void smallPrint() {
        for (int i = 0; i < small.size(); i++) {
            add(
                    "<text x=\"%d\" y=\"%d\" font-size=\"10\" fill=\"#444\">%s</text>\n",
                    LEFT, HEIGHT + LINE * (i + 1), Harmless.xml(small.get(i)));
        }
    }

    private void mark(ScenarioResult each, boolean isOnFront) {
        double longest = sound.stream()
                .mapToDouble(one -> one.metrics().durationSeconds())
                .max()
                .orElse(1);
        double x = x(each.scenario().price());
        double y = y(each.metrics().peakInrushAmps());
        double radius = 7 + 6 * each.metrics().durationSeconds() / Math.max(longest, 1e-9);
        add(
                "<g><title>%s: %.2f, %.1f A, %.2f s</title><circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\""
                        + " stroke=\"#14506e\"/>",
                each.scenario().key(),
                each.scenario().price(),
                each.metrics().peakInrushAmps(),
                each.metrics().durationSeconds(),
                x,
                y,
                radius,
                isOnFront ? "#1d6f9b" : "none");
        if (isOnFront) {
            add(
                    "<text x=\"%.1f\" y=\"%.1f\" font-size=\"10\" font-weight=\"bold\" fill=\"#fff\""
                            + " text-anchor=\"middle\">%d</text>",
                    x, y + 3.5, front.indexOf(each) + 1);
        }
        svg.append("</g>\n");
    }

    private double x(double value) {
        return LEFT + (WIDTH - LEFT - RIGHT) * price.part(value);
    }

    private double y(double value) {
        return HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * peak.part(value);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
