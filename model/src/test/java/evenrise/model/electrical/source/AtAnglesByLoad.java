package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/** The voltages of {@link AtAngles}, load by load, where the whole plant is solved for every set of angles. */
final class AtAnglesByLoad {
    private final RadialPlant.Voltages voltages;
    private final Map<Terminals, Set<Object>> kinds = new HashMap<>();
    private final Map<Object, Plant.Drops> missing = new HashMap<>();

    /** @param steady currents of each panel's steady loads */
    AtAnglesByLoad(
            Plant plant, Map<String, LineValues> steady, List<Inrush> inrushes, ToDoubleFunction<Inrush> lagRadians) {
        Map<String, LineMatrix> siemens = new HashMap<>();
        for (Inrush each : inrushes) {
            Phasor lag = Phasor.polar(1, -lagRadians.applyAsDouble(each));
            siemens.merge(
                    each.drawn().panel(),
                    each.drawn().siemens(plant.nominal(each.drawn().panel())).times(lag),
                    LineMatrix::plus);
        }
        Map<String, RadialPlant.Draw> draws = new LinkedHashMap<>();
        steady.forEach((panel, amps) ->
                draws.put(panel, new RadialPlant.Draw(amps, siemens.getOrDefault(panel, LineMatrix.ZERO))));
        this.voltages = plant.voltages(draws);
        for (Inrush each : inrushes) {
            Drawn drawn = each.drawn();
            LineValues whole = drawn.lines(plant.nominal(drawn.panel()));
            LineValues flowing = drawn.siemens(plant.nominal(drawn.panel())).times(voltages.at(drawn.panel()));
            LineValues more = whole.minus(flowing).times(Phasor.polar(1, -lagRadians.applyAsDouble(each)));
            missing.computeIfAbsent(each.kind(), any -> plant.drops()).add(drawn.panel(), more);
            for (Terminals at : Terminals.of(drawn.phases())) {
                kinds.computeIfAbsent(at, any -> new HashSet<>()).add(each.kind());
            }
        }
    }

    Phasor volts(String node, Terminals at) {
        return at.volts(voltages.at(node));
    }

    /** With all that the inrush of these terminals, and of its kind, might draw, or any part of that. */
    double leastVolts(String node, Terminals at) {
        Phasor more = Phasor.ZERO;
        for (Object kind : kinds.getOrDefault(at, Set.of())) {
            more = more.plus(at.volts(missing.get(kind).at(node)));
        }
        return distance(volts(node, at), more);
    }

    /** From nothing to the nearest of {@code from} less a part of {@code way}. */
    private static double distance(Phasor from, Phasor way) {
        double squared = way.real() * way.real() + way.imaginary() * way.imaginary();
        double part = squared == 0 ? 0 : (from.real() * way.real() + from.imaginary() * way.imaginary()) / squared;
        return from.minus(way.times(Math.max(0, Math.min(1, part)))).length();
    }
}
