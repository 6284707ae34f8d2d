package evenrise.solver.rework;

import evenrise.model.project.Phase;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Tolerances;
import java.util.List;

/** One load that comes on by itself while all others are on. */
final class RestartAlone {
    private RestartAlone() {}

    /** Whether the load's peak, on top of the idle peaks of the others, keeps every inrush limit. */
    static boolean holds(Placement one, List<Placement> all, List<NodeLimits> limits) {
        for (NodeLimits limit : limits) {
            boolean fed = limit.node().equals(NodeFigures.SUPPLY)
                    || limit.node().equals(one.assignment().panel());
            if (!fed || limit.inrushLimitAmps().isEmpty()) {
                continue;
            }
            for (Phase phase : one.phases()) {
                if (peakAmps(one, all, limit.node(), phase)
                        > limit.inrushLimitAmps().getAsDouble() + Tolerances.AMPS) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double peakAmps(Placement one, List<Placement> all, String node, Phase phase) {
        double amps = Math.max(one.load().inrushAmps(), one.load().baseAmps());
        for (Placement other : all) {
            boolean fed = node.equals(NodeFigures.SUPPLY)
                    || node.equals(other.assignment().panel());
            if (fed && !other.id().equals(one.id()) && other.phases().contains(phase)) {
                amps += other.load().baseAmps();
            }
        }
        return amps;
    }
}
