package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.report.Axis;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Variants of one project: imbalance against peak of each one's best plan, each named beside its mark. */
final class VariantChart {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 300;
    private static final int LEFT = 60;
    private static final int RIGHT = 150;
    private static final int TOP = 16;
    private static final int BOTTOM = 46;

    private final StringBuilder svg = new StringBuilder();
    private final Axis peak;
    private final Axis imbalance;

    private VariantChart(List<Outcome.Found> found) {
        peak = Axis.around(
                found.stream()
                        .mapToDouble(each -> each.metrics().peakInrushAmps())
                        .min()
                        .orElse(0),
                found.stream()
                        .mapToDouble(each -> each.metrics().peakInrushAmps())
                        .max()
                        .orElse(1));
        // To the first tick beyond the greatest.
        imbalance = Axis.around(
                0,
                found.stream()
                        .mapToDouble(each -> each.metrics().supplyImbalancePercent())
                        .max()
                        .orElse(1));
    }

    /** @param lots of one project, those with a plan that keeps every hard rule among them drawn */
    static String svg(String project, List<Lot> lots) {
        List<Lot> drawn = lots.stream().filter(lot -> lot.best().isPresent()).toList();
        List<Outcome.Found> found = drawn.stream()
                .map(lot -> lot.best().flatMap(Outcome::found).orElseThrow())
                .toList();
        return new VariantChart(found).draw(project, drawn, found);
    }

    private String draw(String project, List<Lot> lots, List<Outcome.Found> found) {
        add(
                "<svg viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\"><title>%s: imbalance against peak"
                        + " inrush of each variant's best plan</title>",
                WIDTH, HEIGHT, WIDTH, HEIGHT, Harmless.xml(project));
        for (double tick : peak.ticks()) {
            add(
                    "<line class=\"grid\" x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\"/><text x=\"%.1f\" y=\"%d\""
                            + " text-anchor=\"middle\">%s</text>",
                    x(tick), x(tick), TOP, HEIGHT - BOTTOM, x(tick), HEIGHT - BOTTOM + 16, peak.label(tick));
        }
        for (double tick : imbalance.ticks()) {
            add(
                    "<line class=\"grid\" x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\"/><text x=\"%d\" y=\"%.1f\""
                            + " text-anchor=\"end\">%s</text>",
                    LEFT, WIDTH - RIGHT, y(tick), y(tick), LEFT - 6, y(tick) + 4, imbalance.label(tick));
        }
        add(
                "<text x=\"%d\" y=\"%d\" text-anchor=\"middle\">peak inrush at nominal voltage, A</text>",
                (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 8);
        add(
                "<text transform=\"translate(14 %d) rotate(-90)\" text-anchor=\"middle\">imbalance of the supply,"
                        + " %%</text>",
                (TOP + HEIGHT - BOTTOM) / 2);
        List<Double> taken = new ArrayList<>();
        for (int i = 0; i < lots.size(); i++) {
            mark(lots.get(i), found.get(i), taken);
        }
        return svg.append("</svg>").toString();
    }

    /** Names keep apart from each other, if need be a line further down. */
    private void mark(Lot lot, Outcome.Found found, List<Double> taken) {
        double x = x(found.metrics().peakInrushAmps());
        double y = y(found.metrics().supplyImbalancePercent());
        double line = y + 4;
        while (overlaps(taken, line)) {
            line += 14;
        }
        taken.add(line);
        add(
                "<circle class=\"%s\" cx=\"%.1f\" cy=\"%.1f\" r=\"5\"><title>%s: %.1f A, %.2f %%</title></circle><text"
                        + " x=\"%.1f\" y=\"%.1f\">%s</text>",
                lot.sound() > 0 ? "sound" : "limits",
                x,
                y,
                Harmless.xml(lot.variant()),
                found.metrics().peakInrushAmps(),
                found.metrics().supplyImbalancePercent(),
                x + 9,
                line,
                Harmless.xml(Harmless.cut(lot.variant(), 22)));
    }

    private static boolean overlaps(List<Double> taken, double line) {
        return taken.stream().anyMatch(each -> Math.abs(each - line) < 13);
    }

    private double x(double value) {
        return LEFT + (WIDTH - LEFT - RIGHT) * peak.part(value);
    }

    private double y(double value) {
        return HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * imbalance.part(value);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
