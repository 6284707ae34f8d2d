package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** The voltages of a plant where each inrush is an impedance of a known angle. */
final class AtAngles {
    private final Map<String, LineValues> known = new HashMap<>();
    private final Function<String, LineValues> voltages;
    private final Plant plant;
    private final List<InrushLoad> gear;
    private final ToDoubleFunction<InrushLoad> lagRadians;
    private Map<Integer, Plant.Drops> missing;

    /** @param response of the panels of the gear, each once, in the order in which it names them */
    AtAngles(Plant plant, Plant.Response response, List<InrushLoad> gear, ToDoubleFunction<InrushLoad> lagRadians) {
        this.plant = plant;
        this.gear = gear;
        this.lagRadians = lagRadians;
        Map<String, LineMatrix> siemens = new LinkedHashMap<>();
        for (InrushLoad each : gear) {
            Phasor lag = Phasor.polar(1, -lagRadians.applyAsDouble(each));
            siemens.merge(each.panel(), each.siemens().times(lag), LineMatrix::plus);
        }
        this.voltages = response.to(List.copyOf(siemens.values()));
    }

    /** What each kind would draw more at nominal voltage. */
    private Map<Integer, Plant.Drops> missing() {
        if (missing == null) {
            missing = new HashMap<>();
            for (InrushLoad each : gear) {
                LineValues flowing = each.siemens().times(at(each.panel()));
                LineValues more = each.whole().minus(flowing).times(Phasor.polar(1, -lagRadians.applyAsDouble(each)));
                missing.computeIfAbsent(each.kind(), any -> plant.drops()).add(each.panel(), more);
            }
        }
        return missing;
    }

    private LineValues at(String node) {
        return known.computeIfAbsent(node, voltages);
    }

    Phasor volts(String node, Terminals at) {
        return at.volts(at(node));
    }

    /**
     * With all that the inrush of these terminals, and of its kind, might draw, or any part of that.
     *
     * @param kinds of what is fed between these terminals
     */
    double leastVolts(String node, Terminals at, Collection<Integer> kinds) {
        Phasor more = Phasor.ZERO;
        for (int kind : kinds) {
            more = more.plus(at.volts(missing().get(kind).at(node)));
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
