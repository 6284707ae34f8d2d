package evenrise.model.electrical.source;

import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/**
 * How far one ampere that a panel's load draws, in each of its lines, may lower the voltages that feed something, in percent
 * of the nominal ones, whatever its angle: lengths of drops, neutrals and transformers with them.
 */
public final class UnitDips {
    private final UnitDrops units;
    private final List<String> nodes = new ArrayList<>();
    private final List<Integer> places = new ArrayList<>();

    /** @param fed terminals that feed something, by the nodes that are told about */
    public UnitDips(Plant plant, List<Terminals> terminals, Map<String, ? extends Collection<Terminals>> fed) {
        this.units = new UnitDrops(plant, terminals, fed.keySet());
        fed.forEach((node, all) -> all.forEach(at -> {
            nodes.add(node);
            places.add(units.place(node, at));
        }));
    }

    /** Of each voltage the node; a node has several. */
    public List<String> nodes() {
        return List.copyOf(nodes);
    }

    /** By voltage. */
    public double[] percentPerAmp(String panel, List<Phase> phases) {
        UnitDrops.Unit unit = units.of(panel, phases);
        return places.stream()
                .mapToDouble(place -> 100 * unit.volts()[place] / units.nominalVolts(place))
                .toArray();
    }
}
