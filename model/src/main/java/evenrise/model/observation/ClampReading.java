package evenrise.model.observation;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * How much more a clamp reads when loads come on, beside what flows already: phasors at stated power factors, idle, with
 * what is left of surges at the same angles.
 */
final class ClampReading {
    private static final double MILLIS = 1000;

    private final PhaseSystem system;
    private final List<NodeLoads.Seen> running;
    private final List<NodeLoads.Seen> starting;
    private final ToDoubleFunction<NodeLoads.Seen> onSeconds;

    /**
     * @param starting what one command lets come on
     * @param onSeconds when each of them does
     */
    ClampReading(Layout layout, int point, List<NodeLoads.Seen> starting, ToDoubleFunction<NodeLoads.Seen> onSeconds) {
        this.onSeconds = onSeconds;
        this.system = layout.distribution().points().get(point).system();
        this.starting = starting;
        Set<NodeLoads.Seen> come = new HashSet<>(starting);
        this.running = layout.nodeLoads().seen(point).stream()
                .filter(each -> !come.contains(each))
                .toList();
    }

    /** @param together of those that start, what comes on at one moment */
    Map<Phase, Double> more(List<NodeLoads.Seen> together, double seconds) {
        LineCurrents lines = new LineCurrents(system);
        running.forEach(each -> add(lines, each, each.placement().load().idleAmps()));
        for (NodeLoads.Seen each : starting) {
            double since = seconds - onSeconds.applyAsDouble(each);
            if (since > 0 && !together.contains(each)) {
                add(lines, each, amps(each.placement().load(), since));
            }
        }
        Map<Phase, Double> before = lengths(lines);
        together.forEach(each -> add(lines, each, each.placement().load().idleAmps()));
        Map<Phase, Double> more = new EnumMap<>(Phase.class);
        lengths(lines).forEach((phase, amps) -> more.put(phase, amps - before.get(phase)));
        return more;
    }

    private static double amps(Load load, double since) {
        double surge = Math.max(0, load.inrushPeakAmps().orElse(0) / Math.sqrt(2) - load.idleAmps());
        return load.idleAmps() + (surge == 0 ? 0 : surge * Math.pow(2, -since * MILLIS / load.inrushHalfMillis()));
    }

    private static void add(LineCurrents lines, NodeLoads.Seen seen, double amps) {
        lines.add(seen.placement().phases(), amps, Lag.of(seen.placement().load()));
    }

    private static Map<Phase, Double> lengths(LineCurrents lines) {
        Map<Phase, Double> lengths = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            lengths.put(phase, lines.line(phase).length());
        }
        return lengths;
    }
}
