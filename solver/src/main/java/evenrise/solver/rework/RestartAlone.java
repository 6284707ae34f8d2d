package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.Tolerances;
import java.util.List;
import java.util.Optional;

/** One load that comes on by itself while all others are on. */
final class RestartAlone {
    private RestartAlone() {}

    /**
     * Whether the load's peak, on top of the idle peaks of the others, keeps every inrush limit; others on commands of their
     * own may be in full use.
     */
    static boolean holds(String load, Layout all, List<NodeLimits> limits) {
        for (int node = 0; node < limits.size(); node++) {
            NodeLimits limit = limits.get(node);
            if (limit.inrushLimitAmps().isEmpty()) {
                continue;
            }
            List<Seen> seen = all.nodeLoads().seen(node);
            Optional<Seen> one = seen.stream()
                    .filter(each -> each.placement().id().equals(load))
                    .findFirst();
            for (Phase phase : Phase.values()) {
                boolean draws = one.isPresent() && one.get().parts()[phase.ordinal()] > 0;
                if (draws
                        && peakAmps(one.get(), seen, phase, all.project().hasClocks())
                                > limit.inrushLimitAmps().getAsDouble() + Tolerances.AMPS) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double peakAmps(Seen one, List<Seen> all, Phase phase, boolean hasClocks) {
        Load starting = one.placement().load();
        double amps = Math.max(starting.inrushAmps(), starting.baseAmps()) * one.parts()[phase.ordinal()];
        for (Seen other : all) {
            if (other != one) {
                Load load = other.placement().load();
                boolean isElsewhere = hasClocks && !load.system().equals(starting.system());
                double crest =
                        isElsewhere ? Math.max(load.baseAmps(), Math.sqrt(2) * load.runningAmps()) : load.baseAmps();
                amps += crest * other.parts()[phase.ordinal()];
            }
        }
        return amps;
    }
}
