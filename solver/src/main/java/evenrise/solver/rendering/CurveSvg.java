package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Envelope;
import evenrise.solver.report.Axis;
import java.util.Comparator;
import java.util.Locale;

/** The envelope of each phase over time, a lane each, with the peak marked, as an SVG that stands by itself. */
final class CurveSvg {
    private static final double GAP = 10;

    private final StringBuilder svg = new StringBuilder();
    private final Document document;
    private final Plot plot;

    private CurveSvg(Document document) {
        this.document = document;
        this.plot = Plot.of(document);
    }

    static String of(Document document) {
        return new CurveSvg(document).draw();
    }

    private String draw() {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\""
                        + " class=\"curve\" role=\"img\" font-size=\"12\">",
                Plot.WIDTH, Plot.HEIGHT, Plot.WIDTH, Plot.HEIGHT);
        add("<title>Current of the supply by the envelopes at nominal voltage, on each phase over time</title><g"
                + " class=\"seconds\">");
        Axis seconds = Axis.fromZero(plot.endSeconds());
        seconds.ticks().forEach(tick -> secondsTick(seconds, tick));
        add("</g><g class=\"amps\"></g><g class=\"phases\">");
        for (int phase = 0; phase < document.envelopes().size(); phase++) {
            curve(phase);
        }
        add("</g>");
        peak(document.envelopes().stream()
                .max(Comparator.comparingDouble(Envelope::peakAmps))
                .orElseThrow());
        return svg.append("</svg>").toString();
    }

    private void secondsTick(Axis axis, double seconds) {
        double x = plot.x(seconds);
        int bottom = Plot.HEIGHT - Plot.BOTTOM;
        add(
                "<line class=\"grid\" stroke=\"#888888\" stroke-width=\"0.8\" x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\""
                        + " y2=\"%d\"/>",
                x, x, bottom, bottom + 5);
        add(
                "<text class=\"tick\" x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">%s s</text>",
                x, bottom + 19, x > Plot.WIDTH - 40 ? "end" : "middle", axis.label(seconds));
    }

    /** In a lane of its own, so that phases do not cover each other. */
    private void curve(int phase) {
        Envelope envelope = document.envelopes().get(phase);
        StringBuilder path = new StringBuilder();
        for (int k = 0; k < envelope.seconds().size(); k++) {
            path.append(String.format(
                    Locale.ROOT,
                    "%s%.1f %.1f",
                    k == 0 ? "M" : "L",
                    plot.x(envelope.seconds().get(k)),
                    y(phase, envelope.amps().get(k))));
        }
        add(
                "<text class=\"letter\" x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%s</text><path class=\"phase\" fill=\"none\""
                        + " stroke=\"%s\" stroke-width=\"1.5\" d=\"%s\"/>",
                Plot.LEFT - 58, y(phase, plot.mostAmps() / 2) + 6, envelope.phase(), envelope.colour(), path);
    }

    private double y(int phase, double amps) {
        double room = (double) (Plot.HEIGHT - Plot.BOTTOM - Plot.TOP)
                / document.envelopes().size();
        double height = room - GAP;
        return Plot.TOP + room * phase + height * (1 - amps / plot.mostAmps());
    }

    /** Its words stand above the drawing, where no curve runs. */
    private void peak(Envelope worst) {
        double x = plot.x(Math.max(0, worst.peakAtSeconds() - document.toleranceSeconds()));
        add(
                "<circle class=\"peak\" fill=\"none\" stroke=\"#b3261e\" stroke-width=\"2\" cx=\"%.1f\" cy=\"%.1f\""
                        + " r=\"5\"/>",
                x, y(document.envelopes().indexOf(worst), worst.peakAmps()));
        add(
                "<text class=\"tick peaked\" x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">peak %.1f A, phase %s, %.2f"
                        + " s</text><text class=\"tick bounded\" x=\"%d\" y=\"%d\"></text>",
                x,
                Plot.TOP - 12,
                x > Plot.WIDTH - 150 ? "end" : x < Plot.LEFT + 330 ? "start" : "middle",
                worst.peakAmps(),
                worst.phase(),
                worst.peakAtSeconds(),
                Plot.LEFT + 8,
                Plot.TOP - 12);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
