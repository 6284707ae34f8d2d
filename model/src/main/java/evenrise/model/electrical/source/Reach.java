package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Sums of the magnitudes of drops, at the supply and along each feeder. */
final class Reach {
    private final RadialPlant plant;
    private final List<Terminals> terminals;
    private final double[] atSource;
    private final Map<String, double[]> atFeeder = new HashMap<>();

    Reach(RadialPlant plant, List<Terminals> terminals) {
        this.plant = plant;
        this.terminals = terminals;
        this.atSource = new double[terminals.size()];
    }

    void add(Drawn drawn, double times) {
        LineValues lines = drawn.lines(plant.nominal());
        add(atSource, plant.source().times(lines), times);
        double[] own = atFeeder.computeIfAbsent(drawn.panel(), any -> new double[terminals.size()]);
        add(own, plant.feeder(drawn.panel()).times(lines), times);
    }

    double volts(String node, Terminals at) {
        int index = terminals.indexOf(at);
        double[] own = atFeeder.get(node);
        return atSource[index] + (own == null ? 0 : own[index]);
    }

    private void add(double[] sums, LineValues drops, double times) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += times * terminals.get(i).volts(drops).length();
        }
    }
}
