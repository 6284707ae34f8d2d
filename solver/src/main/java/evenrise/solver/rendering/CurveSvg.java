package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Envelope;
import evenrise.solver.report.Axis;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The envelope of each phase over time, with the peak marked, as an SVG that stands by itself. */
final class CurveSvg {
    private static final List<String> DASHES = List.of("none", "8 3", "2 3");

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
                + " class=\"amps\">");
        Axis amps = Axis.fromZero(plot.mostAmps());
        amps.ticks().forEach(tick -> ampsTick(amps, tick));
        add("</g><g class=\"seconds\">");
        Axis seconds = Axis.fromZero(plot.endSeconds());
        seconds.ticks().forEach(tick -> secondsTick(seconds, tick));
        add("</g>");
        for (int phase = 0; phase < document.envelopes().size(); phase++) {
            curve(phase);
        }
        peak(document.envelopes().stream()
                .max(Comparator.comparingDouble(Envelope::peakAmps))
                .orElseThrow());
        return svg.append("</svg>").toString();
    }

    private void ampsTick(Axis axis, double amps) {
        double y = plot.y(amps);
        add(
                "<line class=\"grid\" stroke=\"#c9c9c9\" stroke-width=\"0.6\" x1=\"%d\" x2=\"%d\" y1=\"%.1f\""
                        + " y2=\"%.1f\"/>",
                Plot.LEFT, Plot.WIDTH - Plot.RIGHT, y, y);
        add(
                "<text class=\"tick\" x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%s A</text>",
                Plot.LEFT - 6, y + 4, axis.label(amps));
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

    /** A light edge below the line keeps a dark conductor's colour legible on dark paper. */
    private void curve(int phase) {
        Envelope envelope = document.envelopes().get(phase);
        StringBuilder points = new StringBuilder();
        for (int k = 0; k < envelope.seconds().size(); k++) {
            points.append(String.format(
                    Locale.ROOT,
                    "%.1f,%.1f ",
                    plot.x(envelope.seconds().get(k)),
                    plot.y(envelope.amps().get(k))));
        }
        String line = "<polyline class=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\" stroke-dasharray=\"%s\""
                + " points=\"%s\"/>";
        add(
                line,
                "edge e" + phase,
                "#ffffff",
                "4",
                DASHES.get(phase),
                points.toString().strip());
        add(
                line,
                "phase p" + phase,
                envelope.colour(),
                "1.8",
                DASHES.get(phase),
                points.toString().strip());
    }

    /** Its words stand above the drawing, where no curve runs. */
    private void peak(Envelope worst) {
        double x = plot.x(Math.max(0, worst.peakAtSeconds() - document.toleranceSeconds()));
        double y = plot.y(worst.peakAmps());
        add(
                "<line class=\"peak\" stroke=\"#b3261e\" stroke-width=\"1\" stroke-dasharray=\"1 2\" x1=\"%.1f\""
                        + " x2=\"%.1f\" y1=\"%d\" y2=\"%.1f\"/>",
                x, x, Plot.TOP - 12, y - 6);
        add(
                "<circle class=\"peak\" fill=\"none\" stroke=\"#b3261e\" stroke-width=\"2\" cx=\"%.1f\" cy=\"%.1f\""
                        + " r=\"5\"/>",
                x, y);
        add(
                "<text class=\"tick peaked\" x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">peak %.1f A, phase %s, %.2f"
                        + " s</text>",
                x,
                Plot.TOP - 17,
                x > Plot.WIDTH - 150 ? "end" : x < Plot.LEFT + 110 ? "start" : "middle",
                worst.peakAmps(),
                worst.phase(),
                worst.peakAtSeconds());
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
