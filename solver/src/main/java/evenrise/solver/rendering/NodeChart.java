package evenrise.solver.rendering;

import evenrise.solver.document.Envelope;
import evenrise.solver.document.NodeCurves;
import evenrise.solver.document.Unrounded;
import evenrise.solver.report.Axis;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The current of one node over time, to print: a lane for each phase, all of one scale, so that phases do not cover each
 * other. Lengths without a unit are those of the drawing, four to a millimetre.
 *
 * @param top current at the upper edge of every lane, in ampere
 * @param limit allowed peak in ampere, empty where there is none
 * @param isLimitDrawn whether it lies inside the lanes
 * @param ticks at equal distances of time
 * @param system whose command it is drawn for; empty where one switches all
 */
public record NodeChart(
        int widthMillimetres,
        int heightMillimetres,
        List<Lane> lanes,
        String top,
        String limit,
        boolean isLimitDrawn,
        List<Tick> ticks,
        String system) {
    private static final double PER_MILLIMETRE = 4;
    private static final double MARK = 5;

    /**
     * @param line path of the envelope
     * @param area path of what is below it
     * @param limit height of the allowed peak; empty where it is not drawn
     * @param mark path of the sign above the peak
     * @param isGreatest whether no other phase peaks higher
     * @param before path of the envelope by an earlier plan; empty where there is none
     * @param used height of the current once all is in use; empty where one command switches all
     * @param usedAmps that current
     */
    public record Lane(
            String phase,
            String colour,
            String peak,
            String at,
            String line,
            String area,
            String limit,
            String mark,
            boolean isGreatest,
            String before,
            String used,
            String usedAmps) {}

    /**
     * @param at its place across the drawing
     * @param percent the same, of the width
     */
    public record Tick(String label, String at, String percent) {}

    public double width() {
        return widthMillimetres * PER_MILLIMETRE;
    }

    public double height() {
        return heightMillimetres * PER_MILLIMETRE;
    }

    static NodeChart of(NodeCurves node, int widthMillimetres, int heightMillimetres) {
        return of(node, Optional.empty(), widthMillimetres, heightMillimetres);
    }

    /** @param earlier by another plan, drawn beneath */
    static NodeChart of(NodeCurves node, Optional<NodeCurves> earlier, int widthMillimetres, int heightMillimetres) {
        double width = widthMillimetres * PER_MILLIMETRE;
        double height = heightMillimetres * PER_MILLIMETRE;
        double end =
                Math.max(lastSeconds(node), earlier.map(NodeChart::lastSeconds).orElse(0.0));
        double peak =
                Math.max(node.peakAmps(), earlier.map(NodeCurves::peakAmps).orElse(0.0));
        double top = roundedUp(Math.max(1, Math.max(peak, node.usedAmps()) * 1.18));
        double limit = node.inrushLimitAmps().orElse(0);
        boolean isLimitDrawn = limit > 0 && limit <= top;
        Axis seconds = Axis.fromZero(end);
        List<Tick> ticks = seconds.ticks().stream()
                .filter(tick -> tick < end)
                .map(tick -> new Tick(
                        seconds.label(tick) + " s",
                        format("%.1f", width * tick / end),
                        format("%.3f", 100 * tick / end)))
                .toList();
        List<Lane> lanes = new ArrayList<>();
        for (int i = 0; i < node.phases().size(); i++) {
            Envelope phase = node.phases().get(i);
            String line = line(phase, width / end, height, top);
            double peakX = width * phase.peakAtSeconds() / end;
            double peakY = height * (1 - phase.peakAmps() / top) - 1;
            lanes.add(new Lane(
                    phase.phase(),
                    phase.colour(),
                    format("%.1f", phase.peakAmps()),
                    format("%.2f", phase.peakAtSeconds()),
                    line,
                    line + format("V%.1fL0 %.1fZ", height, height),
                    isLimitDrawn ? format("%.1f", height * (1 - limit / top)) : "",
                    format("M%.1f %.1fl%.1f %.1fl%.1f 0Z", Math.max(MARK, peakX), peakY, -MARK, -1.6 * MARK, 2 * MARK),
                    phase.peakAmps() == node.peakAmps(),
                    earlier.stream()
                            .flatMap(each -> each.phases().stream())
                            .filter(each -> each.phase().equals(phase.phase()))
                            .map(each -> line(each, width / end, height, top))
                            .findFirst()
                            .orElse(""),
                    phase.usedAmps() > 0 ? format("%.1f", height * (1 - phase.usedAmps() / top)) : "",
                    phase.usedAmps() > 0 ? format("%.1f", phase.usedAmps()) : ""));
        }
        return new NodeChart(
                widthMillimetres,
                heightMillimetres,
                lanes,
                format("%.0f", top),
                limit > 0 ? Unrounded.rated(limit) : "",
                isLimitDrawn,
                ticks,
                node.system().orElse(""));
    }

    static double lastSeconds(NodeCurves node) {
        List<Double> seconds = node.phases().get(0).seconds();
        return seconds.get(seconds.size() - 1);
    }

    private static String line(Envelope phase, double perSecond, double height, double top) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < phase.seconds().size(); i++) {
            path.append(format(
                    "%s%.1f %.1f",
                    i == 0 ? "M" : "L",
                    phase.seconds().get(i) * perSecond,
                    height * (1 - phase.amps().get(i) / top)));
        }
        return path.toString();
    }

    /** Two figures, the second even. */
    private static double roundedUp(double amps) {
        double power = Math.pow(10, Math.floor(Math.log10(amps)) - 1);
        return Math.ceil(amps / power / 2) * 2 * power;
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
