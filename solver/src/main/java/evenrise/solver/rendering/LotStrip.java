package evenrise.solver.rendering;

import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.report.Axis;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** One lot's plans on a line: how far each objective is above the lot's best, in percent, all lots by one scale. */
final class LotStrip {
    static final int WIDTH = 260;
    private static final int HEIGHT = 22;
    private static final int MARGIN = 8;
    private static final int RADIUS = 4;

    private final Axis axis;

    LotStrip(List<Lot> lots) {
        axis = Axis.fromZero(Math.max(
                1, 1.2 * lots.stream().mapToDouble(LotStrip::worstPercent).max().orElse(0)));
    }

    private static double worstPercent(Lot lot) {
        return lot.worst().map(each -> percent(lot, each)).orElse(0.0);
    }

    private static double percent(Lot lot, Outcome each) {
        double least = lot.kept().get(0).objective();
        return least > 0 ? 100 * (each.objective() / least - 1) : 0;
    }

    String svg(Lot lot) {
        String marks = lot.kept().stream()
                .map(each -> String.format(
                        Locale.ROOT,
                        "<circle class=\"%s\" cx=\"%.1f\" cy=\"%d\" r=\"%d\"><title>seed %d: %.2f, %.2f %% above the"
                                + " best</title></circle>",
                        each.isSound() ? "sound" : "limits",
                        x(percent(lot, each)),
                        HEIGHT / 2,
                        RADIUS,
                        each.seed(),
                        each.objective(),
                        percent(lot, each)))
                .collect(Collectors.joining());
        return String.format(
                Locale.ROOT,
                "<svg viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\"><title>%s</title><line class=\"axis\""
                        + " x1=\"%d\" x2=\"%d\" y1=\"%d\" y2=\"%d\"/>%s</svg>",
                WIDTH,
                HEIGHT,
                WIDTH,
                HEIGHT,
                lot.kept().isEmpty()
                        ? "no plan keeps every hard rule"
                        : String.format(
                                Locale.ROOT,
                                "%d plans, the worst %.2f %% above the best",
                                lot.kept().size(),
                                worstPercent(lot)),
                MARGIN,
                WIDTH - MARGIN,
                HEIGHT / 2,
                HEIGHT / 2,
                marks);
    }

    /** The scale of all strips. */
    String scale() {
        String ticks = axis.ticks().stream()
                .map(tick -> String.format(
                        Locale.ROOT,
                        "<line class=\"axis\" x1=\"%.1f\" x2=\"%.1f\" y1=\"14\" y2=\"20\"/><text x=\"%.1f\" y=\"11\""
                                + " text-anchor=\"%s\">%s</text>",
                        x(tick),
                        x(tick),
                        x(tick),
                        tick == 0 ? "start" : axis.part(tick) > 0.95 ? "end" : "middle",
                        axis.label(tick)))
                .collect(Collectors.joining());
        return String.format(
                Locale.ROOT,
                "<svg viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" aria-hidden=\"true\">%s</svg>",
                WIDTH,
                HEIGHT,
                WIDTH,
                HEIGHT,
                ticks);
    }

    private double x(double percent) {
        return MARGIN + (WIDTH - 2 * MARGIN) * axis.part(percent);
    }
}
