package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Sums of the magnitudes of drops, in every zone of a plant. */
final class Reach {
    private final Plant plant;
    private final List<Terminals> terminals;
    private final List<Drawn> drawn = new ArrayList<>();
    private final List<Double> times = new ArrayList<>();
    private final Map<String, double[]> byZone = new HashMap<>();
    private final Map<List<String>, Map<Drawn, double[]>> units;

    /** @param units volts that one ampere drops, by zone and panel, kept for the next */
    Reach(Plant plant, List<Terminals> terminals, Map<List<String>, Map<Drawn, double[]>> units) {
        this.plant = plant;
        this.terminals = terminals;
        this.units = units;
    }

    void add(Drawn more, double moreTimes) {
        drawn.add(more);
        times.add(moreTimes);
    }

    double volts(String node, Terminals at) {
        int index = terminals.indexOf(at);
        double sum = 0;
        for (String zone : plant.zones(node)) {
            sum += byZone.computeIfAbsent(zone, this::sums)[index];
        }
        return sum;
    }

    private double[] sums(String zone) {
        double[] sums = new double[terminals.size()];
        for (int k = 0; k < drawn.size(); k++) {
            Drawn each = drawn.get(k);
            if (plant.touches(zone, each.panel())) {
                double[] unit = units.computeIfAbsent(List.of(zone, each.panel()), any -> new HashMap<>())
                        .computeIfAbsent(new Drawn(each.panel(), each.phases(), 1), one -> volts(zone, one));
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += times.get(k) * each.amps() * unit[i];
                }
            }
        }
        return sums;
    }

    private double[] volts(String zone, Drawn one) {
        LineValues drop = plant.drop(zone, one.panel(), one.lines(plant.nominal(one.panel())));
        return terminals.stream().mapToDouble(at -> at.volts(drop).length()).toArray();
    }
}
