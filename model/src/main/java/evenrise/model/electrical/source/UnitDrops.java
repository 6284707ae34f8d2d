package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Phase;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What one ampere drops at every point of a plant, between all terminals that are asked about: worked out once for all loads
 * of a panel on the same lines. A place is a point and its terminals; places of a point stand side by side.
 */
public final class UnitDrops {
    private final Plant plant;
    private final List<String> nodes;
    private final List<Terminals> terminals;
    private final Map<String, Integer> nodePlaces = new HashMap<>();
    private final Map<Terminals, Integer> terminalPlaces = new HashMap<>();
    private final Map<String, Map<List<Phase>, Unit>> units = new HashMap<>();
    private final double[] nominalReal;
    private final double[] nominalImaginary;
    private final double[] nominalVolts;

    /**
     * One ampere in phase with the voltage that feeds it, by place.
     *
     * @param own terminals that feed it
     * @param ownPlaces the same at its panel
     * @param most what it drops between the first of these, as a part of their nominal voltage
     * @param volts lengths of the drops
     * @param byZones sums of the lengths of what the parts of a plant drop, see {@link Plant#zones}
     */
    record Unit(
            List<Terminals> own,
            int[] ownPlaces,
            double most,
            double[] real,
            double[] imaginary,
            double[] volts,
            double[] byZones) {}

    /**
     * @param terminals all that may be asked about
     * @param panels that may draw, beside the points that the plant knows
     */
    public UnitDrops(Plant plant, List<Terminals> terminals, Collection<String> panels) {
        Set<String> all = new LinkedHashSet<>(plant.nodes());
        all.addAll(panels);
        this.plant = plant;
        this.terminals = List.copyOf(terminals);
        this.nodes = List.copyOf(all);
        nodes.forEach(node -> nodePlaces.put(node, nodePlaces.size() * this.terminals.size()));
        this.terminals.forEach(at -> terminalPlaces.put(at, terminalPlaces.size()));
        this.nominalReal = new double[places()];
        this.nominalImaginary = new double[places()];
        this.nominalVolts = new double[places()];
        for (String node : nodes) {
            LineValues nominal = plant.nominal(node);
            for (Terminals at : this.terminals) {
                int place = place(node, at);
                nominalReal[place] = at.volts(nominal).real();
                nominalImaginary[place] = at.volts(nominal).imaginary();
                nominalVolts[place] = at.volts(nominal).length();
            }
        }
    }

    Plant plant() {
        return plant;
    }

    List<String> nodes() {
        return nodes;
    }

    /** All that may be asked about. */
    public List<Terminals> terminals() {
        return terminals;
    }

    int places() {
        return nodes.size() * terminals.size();
    }

    int place(String node, Terminals at) {
        return nodePlaces.get(node) + terminalPlaces.get(at);
    }

    double nominalReal(int place) {
        return nominalReal[place];
    }

    double nominalImaginary(int place) {
        return nominalImaginary[place];
    }

    /** None where the point's system lacks a line. */
    double nominalVolts(int place) {
        return nominalVolts[place];
    }

    Unit of(String panel, List<Phase> phases) {
        return units.computeIfAbsent(panel, any -> new HashMap<>())
                .computeIfAbsent(phases, any -> unit(new Drawn(panel, phases, 1)));
    }

    private Unit unit(Drawn one) {
        LineValues lines = one.lines(plant.nominal(one.panel()));
        double[] real = new double[places()];
        double[] imaginary = new double[places()];
        double[] volts = new double[places()];
        double[] byZones = new double[places()];
        for (String node : nodes) {
            for (String zone : plant.zones(node)) {
                if (plant.touches(zone, one.panel())) {
                    LineValues drop = plant.drop(zone, one.panel(), lines);
                    for (Terminals at : terminals) {
                        Phasor between = at.volts(drop);
                        int place = place(node, at);
                        real[place] += between.real();
                        imaginary[place] += between.imaginary();
                        byZones[place] += between.length();
                    }
                }
            }
        }
        for (int i = 0; i < volts.length; i++) {
            volts[i] = Math.sqrt(real[i] * real[i] + imaginary[i] * imaginary[i]);
        }
        List<Terminals> own = Terminals.of(one.phases());
        int[] places = own.stream().mapToInt(at -> place(one.panel(), at)).toArray();
        return new Unit(own, places, volts[places[0]] / nominalVolts[places[0]], real, imaginary, volts, byZones);
    }
}
