package evenrise.solver.report;

import evenrise.model.plan.Cautions;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Percentile;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How peaks and dips scatter, for a screen. */
public final class ScatterText {
    private static final int NODES = 12;

    private ScatterText() {}

    /** @param all whether every panel is shown */
    public static List<String> lines(
            String project, List<NodeScatter> nodes, int trials, long seed, boolean all, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        List<NodeScatter> shown = nodes.subList(0, all ? nodes.size() : Math.min(NODES, nodes.size()));
        sections.add(new Section(
                        paint,
                        "Scatter of " + String.format(Locale.ROOT, "%,d", trials) + " switch-ons of " + project
                                + ", seed " + seed)
                .text("Peaks in ampere, instantaneous. In brackets: the interval that holds the true percentile with a"
                        + " confidence of 95 %. Beside them: the plan's peak over all voltages that the supply has"
                        + " or that are drawn, and whether that is a bound.")
                .text(bounds(nodes))
                .table(peaks(shown))
                .lines());
        if (!nodes.get(0).dipPercent().isEmpty()) {
            sections.add(new Section(paint, "Deepest dip of the voltage, in percent")
                    .table(dips(shown))
                    .lines());
        } else {
            sections.add(new Section(paint, "Deepest dip of the voltage")
                    .text("Not computed: needs electrical.source.")
                    .lines());
        }
        if (shown.size() < nodes.size()) {
            sections.add(new Section(paint, "More")
                    .text((nodes.size() - shown.size()) + " more panels; --all shows them.")
                    .lines());
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static String bounds(List<NodeScatter> nodes) {
        return nodes.get(0).rangeBound()
                ? "Every load states its inrush and its waveform: what was drawn rests on what is stated."
                : "Some loads state no inrush_peak_a, or neither crest_factor nor third_harmonic, or it is guessed:"
                        + " real peaks may lie above all of these. evenrise audit names the loads.";
    }

    private static Table peaks(List<NodeScatter> nodes) {
        Table table = new Table()
                .words("Node")
                .number("P50")
                .number("P95")
                .number("P99")
                .number("Greatest")
                .number("Over range")
                .words("Bound");
        for (NodeScatter node : nodes) {
            table.row(
                    node.node(),
                    text(node.peakAmps().get(0)),
                    text(node.peakAmps().get(1)),
                    text(node.peakAmps().get(2)),
                    String.format(Locale.ROOT, "%.1f", node.greatestAmps()),
                    String.format(Locale.ROOT, "%.1f", node.rangeAmps()),
                    node.rangeBound() ? "yes" : "no");
        }
        return table;
    }

    private static Table dips(List<NodeScatter> nodes) {
        Table table = new Table()
                .words("Node")
                .number("P50")
                .number("P95")
                .number("P99")
                .number("Deepest");
        for (NodeScatter node : nodes) {
            table.row(
                    node.node(),
                    fine(node.dipPercent().get(0)),
                    fine(node.dipPercent().get(1)),
                    fine(node.dipPercent().get(2)),
                    String.format(Locale.ROOT, "%.2f", node.deepestPercent()));
        }
        return table;
    }

    private static String fine(Percentile each) {
        return String.format(Locale.ROOT, "%.2f [%.2f, %.2f]", each.value(), each.least(), each.most());
    }

    private static String text(Percentile each) {
        return String.format(Locale.ROOT, "%.1f [%.1f, %.1f]", each.value(), each.least(), each.most());
    }
}
