package evenrise.solver.document;

import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.UseCurrents;
import evenrise.solver.report.NodeUse;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * What is planned of a whole panel, to be held against what is measured there.
 *
 * @param voltage nominal, in words
 * @param idleAmps of all of its loads, by phase, as magnitudes add
 * @param use its running currents and peaks
 */
public record PanelTest(String panel, String voltage, Map<Phase, Double> idleAmps, NodeUse use) {
    /** In the project's order. */
    static List<PanelTest> of(Layout layout) {
        List<NodeUse> uses = NodeUse.of(layout);
        UseCurrents idle = UseCurrents.of(layout, load -> load.idleAmps());
        return IntStream.range(0, layout.project().panels().size())
                .mapToObj(i -> {
                    Point point =
                            layout.distribution().of(layout.project().panels().get(i));
                    return new PanelTest(
                            point.id(), NominalVoltage.of(point), idle.runningAmps(point), uses.get(i + 1));
                })
                .toList();
    }
}
