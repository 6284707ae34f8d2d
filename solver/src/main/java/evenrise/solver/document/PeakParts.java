package evenrise.solver.document;

import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.solver.document.Grid.Column;
import evenrise.solver.report.Numbers;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Takes the peak of every node apart: the loads that make most of it, and what is left. */
final class PeakParts {
    private static final int OF_THE_SUPPLY = 20;
    private static final int OF_A_PANEL = 4;

    private final Layout layout;

    private record Share(Placement load, double amps, double baseAmps) {}

    PeakParts(Layout layout) {
        this.layout = layout;
    }

    Grid grid() {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            List<Placement> fed = i == 0
                    ? layout.placements().stream().filter(Placement::fits).toList()
                    : layout.in(layout.project().panels().get(i - 1));
            add(rows, layout.nodes().get(i), fed, i == 0 ? OF_THE_SUPPLY : OF_A_PANEL);
        }
        return new Grid(
                "peak",
                "Peaks taken apart: what makes that of the supply and of each panel",
                "Shares of the envelopes at nominal voltage, instantaneous: not what an rms meter shows."
                        + " The steady part stays; the rest is inrush and dies away.",
                List.of(
                        Column.text("Node"),
                        Column.text("Phase"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.number("On", "s"),
                        Column.number("At the peak", "A"),
                        Column.number("Steady part", "A"),
                        Column.number("Share", "%")),
                rows);
    }

    private void add(List<List<Object>> rows, NodeFigures node, List<Placement> fed, int shown) {
        PhasePeak peak = node.peaks().stream()
                .reduce((kept, next) -> next.amps() > kept.amps() ? next : kept)
                .orElseThrow();
        List<Share> shares = shares(fed, peak);
        shares.stream()
                .limit(shown)
                .forEach(share -> rows.add(List.of(
                        node.node(),
                        peak.phase().name(),
                        share.load().id(),
                        share.load().load().name(),
                        Places.on(share.load()),
                        share.amps(),
                        share.baseAmps(),
                        percent(share.amps(), peak))));
        if (shares.size() > shown) {
            List<Share> others = shares.subList(shown, shares.size());
            double amps = others.stream().mapToDouble(Share::amps).sum();
            rows.add(List.of(
                    node.node(),
                    peak.phase().name(),
                    Numbers.counted(others.size(), "other"),
                    "",
                    "",
                    amps,
                    others.stream().mapToDouble(Share::baseAmps).sum(),
                    percent(amps, peak)));
        }
    }

    /** Largest first. */
    private List<Share> shares(List<Placement> fed, PhasePeak peak) {
        Map<String, Placement> byId = new HashMap<>();
        fed.forEach(each -> byId.put(each.id(), each));
        return PeakShare.of(peak, fed, layout.project().timingToleranceSeconds()).stream()
                .map(share -> new Share(byId.get(share.load()), share.amps(), share.baseAmps()))
                .toList();
    }

    private static double percent(double amps, PhasePeak peak) {
        return peak.amps() == 0 ? 0 : 100 * amps / peak.amps();
    }
}
