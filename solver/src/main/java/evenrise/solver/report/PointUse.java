package evenrise.solver.report;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.Phase;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One point of the distribution: what feeds it, and how much of it is used. Figures by phase beside limits are those of
 * {@link NodeUse}.
 *
 * @param node the panel's or node's id, or the supply
 * @param fedFrom empty for the supply and for further sources
 * @param transformer how it is connected, where the node is the secondary of one
 * @param usedPercent greatest running current over what is allowed, in the worst scene of each phase
 * @param fullUseAmps rms, by phase, every load at its running current, whatever the scenes
 * @param fullUsePercent the greatest of those over what is allowed
 * @param neutralPercent neutral current over what is allowed, in the worst scene
 * @param slots empty where it is no panel
 */
public record PointUse(
        String node,
        Optional<String> fedFrom,
        Optional<TransformerConnection> transformer,
        double lineToNeutralVolts,
        double usedPercent,
        Map<Phase, Double> fullUseAmps,
        double fullUsePercent,
        double neutralPercent,
        Optional<SlotUse> slots) {

    /** The supply first, then panels and nodes in the project's order. */
    public static List<PointUse> of(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        return layout.distribution().points().stream()
                .map(point -> of(layout, point, limits.get(point.index())))
                .toList();
    }

    private static PointUse of(Layout layout, Point point, NodeLimits limit) {
        Map<Phase, Double> running = layout.nodes().get(point.index()).runningAmps();
        return new PointUse(
                point.id(),
                point.parent() < 0
                        ? Optional.empty()
                        : Optional.of(layout.distribution()
                                .points()
                                .get(point.parent())
                                .id()),
                point.node().flatMap(DistributionNode::transformer).map(Transformer::connection),
                point.lineToNeutralVolts(),
                100 * Collections.max(running.values()) / limit.continuousAmps(),
                layout.fullUse().runningAmps(point),
                100 * layout.fullUse().greatestAmps(point) / limit.continuousAmps(),
                100 * layout.nodes().get(point.index()).neutralAmps() / limit.neutralAmps(),
                point.panel().map(panel -> SlotUse.of(layout, panel)));
    }
}
