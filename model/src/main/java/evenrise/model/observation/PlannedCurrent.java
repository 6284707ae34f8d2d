package evenrise.model.observation;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * What a clamp is planned to read while a system starts: idle currents as phasors, without surges, a stair.
 *
 * @param seconds from the command at which something comes on, the first before all of them
 * @param amps by phase from each of these moments on
 */
public record PlannedCurrent(List<Double> seconds, Map<Phase, List<Double>> amps) {
    /**
     * @param point index of a place that feeds no transformer
     * @param system whose command it is; empty where the plant has no systems
     */
    public static PlannedCurrent of(Layout layout, int point, Optional<String> system, double fromSeconds) {
        Point at = layout.distribution().points().get(point);
        List<Placement> direct = layout.nodeLoads().direct(point);
        TreeSet<Double> moments = new TreeSet<>(List.of(fromSeconds));
        direct.stream()
                .filter(each -> startsWith(each, system))
                .forEach(each -> moments.add(each.onSeconds().orElseThrow()));
        Map<Phase, List<Double>> amps = new EnumMap<>(Phase.class);
        at.system().phases().forEach(phase -> amps.put(phase, new ArrayList<>()));
        for (double moment : moments) {
            LineCurrents lines = new LineCurrents(at.system());
            for (Placement each : direct) {
                Load load = each.load();
                boolean isOn = each.isSequenced()
                        ? startsWith(each, system) && each.onSeconds().orElseThrow() <= moment
                        : !load.switched();
                if (isOn) {
                    lines.add(each.phases(), load.idleAmps(), Lag.of(load));
                }
            }
            amps.forEach((phase, values) -> values.add(lines.line(phase).length()));
        }
        return new PlannedCurrent(List.copyOf(moments), amps);
    }

    private static boolean startsWith(Placement placement, Optional<String> system) {
        return placement.isSequenced() && placement.load().system().equals(system);
    }
}
