package evenrise.solver.document;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.UseCurrents;
import evenrise.solver.report.NodeUse;
import java.util.List;
import java.util.Map;

/**
 * What is planned of a whole panel, the supply or a node, to be held against what is measured there.
 *
 * @param voltage nominal, in words
 * @param idleAmps of all of its loads, by phase, as magnitudes add
 * @param use its running currents and peaks
 */
public record PanelTest(String panel, String voltage, Map<Phase, Double> idleAmps, NodeUse use) {
    /** Of panels, in the project's order. */
    static List<PanelTest> of(Layout layout) {
        return of(layout, true);
    }

    /** Of the supply and further nodes. */
    static List<PanelTest> ofFeeders(Layout layout) {
        return of(layout, false);
    }

    private static List<PanelTest> of(Layout layout, boolean isPanel) {
        List<NodeUse> uses = NodeUse.of(layout);
        UseCurrents idle = UseCurrents.of(layout, load -> load.idleAmps());
        return layout.distribution().points().stream()
                .filter(point -> point.panel().isPresent() == isPanel)
                .map(point -> new PanelTest(
                        point.isSupply() ? "supply" : point.id(),
                        NominalVoltage.of(point),
                        idle.runningAmps(point),
                        uses.get(point.index())))
                .toList();
    }
}
