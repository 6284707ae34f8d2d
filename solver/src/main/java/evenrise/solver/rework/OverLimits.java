package evenrise.solver.rework;

import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** By how much lines and neutrals run over what they may carry, of each node in turn. */
final class OverLimits {
    private OverLimits() {}

    /** Of each node each phase that it has, then its neutral; at the worst of its scenes, 0 where nothing is over. */
    static List<Double> amps(Layout layout) {
        List<UseCurrents> uses = layout.sceneUses().isEmpty() ? List.of(layout.fullUse()) : layout.sceneUses();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<Double> over = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            NodeLimits limit = limits.get(i);
            Point point = layout.distribution().points().get(i);
            for (Phase phase : point.system().phases()) {
                over.add(Math.max(
                        0,
                        greatest(uses.stream()
                                        .mapToDouble(use ->
                                                use.running(point).byPhase().getOrDefault(phase, 0.0)))
                                - limit.continuousAmps()));
            }
            over.add(Math.max(
                    0, greatest(uses.stream().mapToDouble(use -> use.neutralAmps(point))) - limit.neutralAmps()));
        }
        return over;
    }

    private static double greatest(DoubleStream amps) {
        return amps.max().orElse(0);
    }
}
