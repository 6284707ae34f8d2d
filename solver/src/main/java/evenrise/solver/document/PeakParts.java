package evenrise.solver.document;

import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PhasePeak;
import evenrise.solver.report.PeakContribution;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Takes the peak of every node apart: the loads that make most of it, and what is left. */
final class PeakParts {
    private static final int OF_THE_SUPPLY = 20;
    private static final int OF_A_PANEL = 4;

    private final Layout layout;

    PeakParts(Layout layout) {
        this.layout = layout;
    }

    DocumentTable<PeakPart> table() {
        List<PeakPart> rows = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            boolean isSource = point.isSupply() || point.isFurtherSource();
            add(rows, point, isSource ? OF_THE_SUPPLY : OF_A_PANEL);
        }
        return new DocumentTable<>(
                "peak",
                layout.project().nodes().isEmpty()
                        ? "Peaks taken apart: what makes that of the supply and of each panel"
                        : "Peaks taken apart: what makes that of the supply, of each panel and of each distribution point",
                "Shares of the envelopes at nominal voltage, instantaneous: not what an rms meter shows."
                        + " The steady part stays; the rest is inrush and dies away."
                        + (layout.project().hasClocks()
                                ? " Loads of systems that do not start count as in use, at their largest use in any scene:"
                                        + " their times are those of their own start signals."
                                : ""),
                List.of(
                        Column.text("node", "Place", PeakPart::node),
                        Column.text("phase", "Phase", part -> part.phase().name()),
                        Column.text("load", "Load", PeakPart::what),
                        Column.text(
                                "name",
                                "Name",
                                part -> part.load().map(PeakContribution::name).orElse("")),
                        new Column<>("on", "On", "s", true, this::on),
                        Column.number("amps", "At the peak", "A", PeakPart::amps),
                        Column.number("base", "Steady part", "A", PeakPart::baseAmps),
                        Column.number("share", "Share", "%", PeakPart::sharePercent)),
                rows,
                part -> part.load().map(PeakContribution::load));
    }

    private Object on(PeakPart part) {
        return part.load()
                .map(load -> load.onSeconds().isPresent()
                        ? (Object) load.onSeconds().getAsDouble()
                        : PlannedCircuit.untimed(
                                layout.index().load(load.load()).orElseThrow().switched()))
                .orElse("");
    }

    private void add(List<PeakPart> rows, Point node, int shown) {
        PhasePeak peak = layout.worstPeak(node.index());
        List<PeakContribution> shares = layout.peakShares(node.index()).stream()
                .map(share -> PeakContribution.of(layout.placement(share.load()).orElseThrow(), share, peak.amps()))
                .toList();
        shares.stream()
                .limit(shown)
                .map(share -> PeakPart.of(node.id(), peak.phase(), share))
                .forEach(rows::add);
        if (shares.size() > shown) {
            List<PeakContribution> others = shares.subList(shown, shares.size());
            double amps = others.stream().mapToDouble(PeakContribution::amps).sum();
            double base =
                    others.stream().mapToDouble(PeakContribution::baseAmps).sum();
            double percent = peak.amps() == 0 ? 0 : 100 * amps / peak.amps();
            rows.add(new PeakPart(node.id(), peak.phase(), Optional.empty(), others.size(), amps, base, percent));
        }
    }
}
