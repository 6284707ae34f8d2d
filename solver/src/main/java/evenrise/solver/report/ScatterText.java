package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Percentile;
import evenrise.model.scatter.Trials;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How peaks and dips scatter, for a screen. */
public final class ScatterText {
    private static final int NODES = 12;

    private ScatterText() {}

    /** @param all whether every panel and node is shown */
    public static List<String> lines(
            Project project, List<NodeScatter> nodes, int trials, long seed, boolean all, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        List<NodeScatter> shown = nodes.subList(0, all ? nodes.size() : Math.min(NODES, nodes.size()));
        Section peaks = new Section(
                        paint,
                        "Scatter of " + String.format(Locale.ROOT, "%,d", trials) + " switch-ons of " + project.name()
                                + ", seed " + seed)
                .text("Peaks in ampere, instantaneous. In brackets: the interval that holds the true percentile with a"
                        + " confidence of 95 %. Beside them: the plan's peak over all voltages that the supply has"
                        + " or that are drawn, and whether that is a bound.")
                .text(bounds(project, nodes));
        if (project.hasClocks()) {
            peaks.text(systems(project));
        }
        sections.add(peaks.table(peaks(shown)).lines());
        List<NodeScatter> dipping =
                shown.stream().filter(node -> !node.dipPercent().isEmpty()).toList();
        if (!dipping.isEmpty()) {
            sections.add(new Section(paint, "Deepest dip of the voltage, in percent")
                    .table(dips(dipping))
                    .lines());
        } else {
            sections.add(new Section(paint, "Deepest dip of the voltage")
                    .text(
                            Trials.hasDips(project)
                                    ? "Not computed: needs electrical.source."
                                    : "Not computed: of several systems at once, dips are not drawn."
                                            + " The electrical review of evenrise audit has them by the envelopes.")
                    .lines());
        }
        if (shown.size() < nodes.size()) {
            sections.add(new Section(paint, "More")
                    .text((nodes.size() - shown.size()) + " more panels and distribution points; --all shows them.")
                    .lines());
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static String bounds(Project project, List<NodeScatter> nodes) {
        if (nodes.get(0).rangeBound()) {
            return "Every load states its inrush and its waveform: what was drawn rests on what is stated.";
        }
        String plant = project.hasClocks()
                ? "No peak is called a bound: what other systems draw in use is taken at the crest of their idle"
                        + " current. "
                : project.nodes().stream().anyMatch(node -> node.transformer().isPresent())
                        ? "Where a distribution point feeds transformers, its peak is not called a bound. "
                        : "";
        return plant + "Where loads state no inrush_peak_a, or neither crest_factor nor third_harmonic, or it is"
                + " guessed, real peaks may lie above all of these. evenrise audit names the loads.";
    }

    /** What is by chance where several systems share nodes. */
    private static String systems(Project project) {
        return project.overlap() == Overlap.ANY
                ? "By chance is what happens within each command. Systems meet at their worst: each at its own peak or"
                        + " in use, all at once."
                : "By chance is what happens within each command. A peak is that of the system that adds most, with the"
                        + " others in use, each load at its largest use in any scene.";
    }

    private static Table peaks(List<NodeScatter> nodes) {
        Table table =
                percentiles("Node").number("Greatest").number("Over range").words("Bound");
        for (NodeScatter node : nodes) {
            table.row(
                    node.node(),
                    text(node.peakAmps().get(0)),
                    text(node.peakAmps().get(1)),
                    text(node.peakAmps().get(2)),
                    Decimals.fixed(node.greatestAmps(), 1),
                    Decimals.fixed(node.rangeAmps(), 1),
                    node.rangeBound() ? "yes" : "no");
        }
        return table;
    }

    private static Table dips(List<NodeScatter> nodes) {
        Table table = percentiles("Node").number("Deepest");
        for (NodeScatter node : nodes) {
            table.row(
                    node.node(),
                    fine(node.dipPercent().get(0)),
                    fine(node.dipPercent().get(1)),
                    fine(node.dipPercent().get(2)),
                    Decimals.fixed(node.deepestPercent(), 2));
        }
        return table;
    }

    private static String fine(Percentile each) {
        return String.format(Locale.ROOT, "%.2f [%.2f, %.2f]", each.value(), each.least(), each.most());
    }

    private static String text(Percentile each) {
        return String.format(Locale.ROOT, "%.1f [%.1f, %.1f]", each.value(), each.least(), each.most());
    }

    private static Table percentiles(String what) {
        return new Table().words(what).number("P50").number("P95").number("P99");
    }
}
