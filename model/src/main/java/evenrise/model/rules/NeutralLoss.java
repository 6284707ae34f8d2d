package evenrise.model.rules;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LostNeutral;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.RideThrough;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * What becomes of the voltages where the neutral breaks on the way to a panel or node, by the currents that its one-pole
 * loads draw at their nominal voltage, also those behind transformers that return by that neutral.
 *
 * @param percents of each phase with something on it, of the nominal voltage; empty where no neutral can move
 * @param endangered loads over what they stand, highest first
 */
public record NeutralLoss(Map<Phase, Double> percents, List<Endangered> endangered) {
    /** What a load that states nothing else is taken to stand: the steady limit of the ITI curve of 2000 (secondary copy). */
    public static final double USUAL_PERCENT = 110;

    /**
     * @param percent of its nominal voltage
     * @param allowedPercent what it stands, stated or usual
     */
    public record Endangered(Load load, double percent, double allowedPercent, boolean isStated) {}

    /**
     * @param amps rms, by load; 0 for one that is off
     */
    public static NeutralLoss of(Layout layout, int point, ToDoubleFunction<Load> amps) {
        Distribution.Point it = layout.distribution().points().get(point);
        LostNeutral star = new LostNeutral(it.system());
        List<NodeLoads.Returned> on = layout.nodeLoads().returning(point).stream()
                .filter(each -> amps.applyAsDouble(each.placement().load()) > 0)
                .toList();
        on.forEach(each -> {
            Load load = each.placement().load();
            star.add(each.phase(), each.part() * amps.applyAsDouble(load), Lag.of(load));
        });
        Map<Phase, Double> percents = new EnumMap<>(Phase.class);
        Map<String, Endangered> endangered = new LinkedHashMap<>();
        for (NodeLoads.Returned each : on) {
            Load load = each.placement().load();
            OptionalDouble percent = star.percent(each.phase());
            if (percent.isEmpty()) {
                continue;
            }
            percents.put(each.phase(), percent.getAsDouble());
            OptionalDouble stated =
                    load.rideThrough().map(RideThrough::mostPercent).orElse(OptionalDouble.empty());
            double allowed = stated.orElse(USUAL_PERCENT);
            if (percent.getAsDouble() > allowed + 1e-9) {
                endangered.put(load.id(), new Endangered(load, percent.getAsDouble(), allowed, stated.isPresent()));
            }
        }
        List<Endangered> sorted = new ArrayList<>(endangered.values());
        sorted.sort((one, other) -> Double.compare(other.percent(), one.percent()));
        return new NeutralLoss(percents, List.copyOf(sorted));
    }
}
