package evenrise.solver.document;

import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Envelope;
import java.util.List;
import java.util.Locale;

/** The envelope of each phase over time, with the peak marked, as an SVG that stands by itself. */
final class CurveSvg {
    static final int WIDTH = 960;
    static final int HEIGHT = 300;
    static final int LEFT = 62;
    static final int RIGHT = 14;
    static final int TOP = 14;
    static final int BOTTOM = 38;
    private static final int TICKS = 5;
    private static final List<String> DASHES = List.of("", "7 3", "2 3");

    private CurveSvg() {}

    static double lastSeconds(Document document) {
        return document.envelopes().stream()
                .flatMap(each -> each.seconds().stream())
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(1);
    }

    static double mostAmps(Document document) {
        return 1.08
                * Math.max(
                        1,
                        document.envelopes().stream()
                                .mapToDouble(Envelope::peakAmps)
                                .max()
                                .orElse(1));
    }

    static String of(Document document) {
        double end = lastSeconds(document);
        double most = mostAmps(document);
        StringBuilder svg = new StringBuilder();
        add(
                svg,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" class=\"curve\" role=\"img\" font-size=\"12\">",
                WIDTH,
                HEIGHT,
                WIDTH,
                HEIGHT);
        svg.append("<title>Upper bound of the supply's current on each phase over time</title>");
        for (int i = 0; i <= TICKS; i++) {
            double amps = most * i / TICKS;
            double seconds = end * i / TICKS;
            add(
                    svg,
                    "<line class=\"grid\" stroke=\"#c9c9c9\" stroke-width=\"0.6\" x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\"/>",
                    LEFT,
                    WIDTH - RIGHT,
                    y(amps, most),
                    y(amps, most));
            add(
                    svg,
                    "<text class=\"tick\" x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%.0f A</text>",
                    LEFT - 6,
                    y(amps, most) + 4,
                    amps);
            add(
                    svg,
                    "<text class=\"tick\" x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">%.1f s</text>",
                    x(seconds, end),
                    HEIGHT - 14,
                    i == TICKS ? "end" : "middle",
                    seconds);
        }
        for (int i = 0; i < document.envelopes().size(); i++) {
            Envelope envelope = document.envelopes().get(i);
            StringBuilder points = new StringBuilder();
            for (int k = 0; k < envelope.seconds().size(); k++) {
                add(
                        points,
                        "%.1f,%.1f ",
                        x(envelope.seconds().get(k), end),
                        y(envelope.amps().get(k), most));
            }
            add(
                    svg,
                    "<polyline class=\"phase p%d\" fill=\"none\" stroke=\"%s\" stroke-width=\"1.8\" stroke-dasharray=\"%s\" points=\"%s\"/>",
                    i,
                    document.phaseColours().get(i),
                    DASHES.get(i).isEmpty() ? "none" : DASHES.get(i),
                    points.toString().strip());
        }
        Envelope worst = document.envelopes().stream()
                .max(java.util.Comparator.comparingDouble(Envelope::peakAmps))
                .orElseThrow();
        add(
                svg,
                "<circle class=\"peak\" fill=\"none\" stroke=\"#b3261e\" stroke-width=\"2\" cx=\"%.1f\" cy=\"%.1f\" r=\"5\"/>",
                x(worst.peakAtSeconds(), end),
                y(worst.peakAmps(), most));
        boolean isRight = worst.peakAtSeconds() > 0.7 * end;
        add(
                svg,
                "<text class=\"tick\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">peak %.1f A, phase %s, %.2f s</text>",
                x(worst.peakAtSeconds(), end) + (isRight ? -10 : 10),
                y(worst.peakAmps(), most) + 16,
                isRight ? "end" : "start",
                worst.peakAmps(),
                worst.phase(),
                worst.peakAtSeconds());
        add(
                svg,
                "<line id=\"cursor\" stroke=\"#1d6f9b\" stroke-width=\"1.4\" x1=\"%d\" x2=\"%d\" y1=\"%d\" y2=\"%d\"/>",
                LEFT,
                LEFT,
                TOP,
                HEIGHT - BOTTOM);
        return svg.append("</svg>").toString();
    }

    private static double x(double seconds, double end) {
        return LEFT + (WIDTH - LEFT - RIGHT) * seconds / end;
    }

    private static double y(double amps, double most) {
        return HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * amps / most;
    }

    private static void add(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values));
    }
}
