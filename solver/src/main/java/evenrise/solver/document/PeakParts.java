package evenrise.solver.document;

import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.solver.report.PeakContribution;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<PeakPart> rows = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            List<Placement> fed = i == 0
                    ? layout.placements().stream().filter(Placement::fits).toList()
                    : layout.in(layout.project().panels().get(i - 1));
            add(rows, layout.nodes().get(i), fed, i == 0 ? OF_THE_SUPPLY : OF_A_PANEL);
        }
        return new DocumentTable<>(
                "peak",
                "Peaks taken apart: what makes that of the supply and of each panel",
                "Shares of the envelopes at nominal voltage, instantaneous: not what an rms meter shows."
                        + " The steady part stays; the rest is inrush and dies away.",
                List.of(
                        Column.text("node", "Node", PeakPart::node),
                        Column.text("phase", "Phase", part -> part.phase().name()),
                        Column.text("load", "Load", PeakPart::what),
                        Column.text(
                                "name",
                                "Name",
                                part -> part.load().map(PeakContribution::name).orElse("")),
                        new Column<>("on", "On", "s", true, PeakParts::on),
                        Column.number("amps", "At the peak", "A", PeakPart::amps),
                        Column.number("base", "Steady part", "A", PeakPart::baseAmps),
                        Column.number("share", "Share", "%", PeakPart::sharePercent)),
                rows,
                part -> part.load().map(PeakContribution::load));
    }

    private static Object on(PeakPart part) {
        return part.load()
                .map(load -> load.onSeconds().isPresent()
                        ? (Object) load.onSeconds().getAsDouble()
                        : PlannedCircuit.ALWAYS_ON)
                .orElse("");
    }

    private void add(List<PeakPart> rows, NodeFigures node, List<Placement> fed, int shown) {
        PhasePeak peak = node.peaks().stream()
                .reduce((kept, next) -> next.amps() > kept.amps() ? next : kept)
                .orElseThrow();
        List<PeakContribution> shares = shares(fed, peak);
        shares.stream()
                .limit(shown)
                .map(share -> PeakPart.of(node.node(), peak.phase(), share))
                .forEach(rows::add);
        if (shares.size() > shown) {
            List<PeakContribution> others = shares.subList(shown, shares.size());
            double amps = others.stream().mapToDouble(PeakContribution::amps).sum();
            double base =
                    others.stream().mapToDouble(PeakContribution::baseAmps).sum();
            double percent = peak.amps() == 0 ? 0 : 100 * amps / peak.amps();
            rows.add(new PeakPart(node.node(), peak.phase(), Optional.empty(), others.size(), amps, base, percent));
        }
    }

    /** Largest first. */
    private List<PeakContribution> shares(List<Placement> fed, PhasePeak peak) {
        Map<String, Placement> byId = new HashMap<>();
        fed.forEach(each -> byId.put(each.id(), each));
        return PeakShare.of(peak, fed, layout.project().timingToleranceSeconds()).stream()
                .map(share -> PeakContribution.of(byId.get(share.load()), share, peak.amps()))
                .toList();
    }
}
