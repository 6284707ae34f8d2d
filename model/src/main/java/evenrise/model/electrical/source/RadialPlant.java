package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.PhaseSystem;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Phasors of a plant in the shape of a star: one source, a feeder to each panel, loads at the panels. Behind the source
 * stands its nominal voltage; its neutral is stiff, so that on three phases its zero-sequence impedance is the positive one. A
 * feeder's neutral joins all its one-pole loads.
 */
public final class RadialPlant implements Plant {
    /** What the node behind the source is called, beside the panels. */
    public static final String SUPPLY = Plant.SUPPLY;

    private final LineValues nominal;
    private final LineMatrix source;
    private final Map<String, LineMatrix> feeders;

    /**
     * What a panel's loads draw.
     *
     * @param amps of those whose current is known, whatever their voltage
     * @param siemens of those that are impedances
     */
    public record Draw(LineValues amps, LineMatrix siemens) {
        /** Of loads whose currents are known alone. */
        public static Draw of(LineValues amps) {
            return new Draw(amps, LineMatrix.ZERO);
        }
    }

    /** Voltages of the lines to neutral, at the supply and at each panel that was asked about. */
    public record Voltages(LineValues supply, Map<String, LineValues> panels) {
        /** At the supply or at a panel. */
        public LineValues at(String node) {
            return node.equals(SUPPLY) ? supply : panels.getOrDefault(node, supply);
        }
    }

    /**
     * @param source between a line and neutral
     * @param feeders of the panels; one that is missing has no impedance
     */
    public RadialPlant(
            PhaseSystem system, double lineToNeutralVolts, Impedance source, Map<String, LineMatrix> feeders) {
        this.nominal = LineValues.nominal(system, lineToNeutralVolts);
        this.source = behind(system, source);
        this.feeders = Map.copyOf(feeders);
    }

    /** A source, or a transformer's windings, between its lines and neutral. */
    public static LineMatrix behind(PhaseSystem system, Impedance source) {
        // SourceImpedance tells a leg of split-phase; between the legs there is three times as much, so currents that
        // leave by one leg and return by the other meet half a leg's more in each.
        Phasor mutual = system == PhaseSystem.SPLIT_PHASE ? source.complex().times(-0.5) : Phasor.ZERO;
        return LineMatrix.coupled(system, source.complex(), mutual);
    }

    /** A feeder whose neutral carries what its lines do not return among themselves. */
    public static LineMatrix feeder(PhaseSystem system, Impedance line, Impedance neutral) {
        return LineMatrix.coupled(system, line.plus(neutral).complex(), neutral.complex());
    }

    public LineValues nominal() {
        return nominal;
    }

    public LineMatrix source() {
        return source;
    }

    public LineMatrix feeder(String panel) {
        return feeders.getOrDefault(panel, LineMatrix.ZERO);
    }

    @Override
    public Collection<String> nodes() {
        List<String> all = new ArrayList<>(List.of(SUPPLY));
        all.addAll(feeders.keySet());
        return all;
    }

    @Override
    public LineValues nominal(String node) {
        return nominal;
    }

    @Override
    public List<String> carrying(String node) {
        return node.equals(SUPPLY) ? List.of(SUPPLY) : List.of(node, SUPPLY);
    }

    @Override
    public List<String> zones(String node) {
        return node.equals(SUPPLY) ? List.of(SUPPLY) : List.of(SUPPLY, node);
    }

    @Override
    public boolean touches(String zone, String panel) {
        return zone.equals(SUPPLY) || zone.equals(panel);
    }

    @Override
    public LineValues drop(String zone, String panel, LineValues lines) {
        return (zone.equals(SUPPLY) ? source : feeder(panel)).times(lines);
    }

    @Override
    public boolean isPanel(String node) {
        return true;
    }

    @Override
    public Drops drops() {
        Map<String, LineValues> own = new HashMap<>();
        return new Drops() {
            private LineValues all = LineValues.ZERO;

            @Override
            public void add(String panel, LineValues lines) {
                all = all.plus(lines);
                own.merge(panel, lines, LineValues::plus);
            }

            @Override
            public LineValues at(String node) {
                LineValues drop = source.times(all);
                LineValues here = own.get(node);
                return here == null ? drop : drop.plus(feeder(node).times(here));
            }
        };
    }

    @Override
    public Response response(Map<String, LineValues> amps, Voltages steady, List<String> panels) {
        return siemens -> {
            Map<String, LineMatrix> byPanel = new HashMap<>();
            for (int k = 0; k < panels.size(); k++) {
                byPanel.put(panels.get(k), siemens.get(k));
            }
            Map<String, Draw> draws = new LinkedHashMap<>();
            amps.forEach((panel, lines) ->
                    draws.put(panel, new Draw(lines, byPanel.getOrDefault(panel, LineMatrix.ZERO))));
            return voltages(draws)::at;
        };
    }

    /** Where every panel draws what {@code draws} says. Time: linear in the panels. */
    @Override
    public Voltages voltages(Map<String, Draw> draws) {
        LineValues known = LineValues.ZERO;
        LineMatrix seen = LineMatrix.ZERO;
        Map<String, LineMatrix> behind = new HashMap<>();
        for (Map.Entry<String, Draw> each : draws.entrySet()) {
            Draw draw = each.getValue();
            known = known.plus(draw.amps());
            if (!draw.siemens().equals(LineMatrix.ZERO)) {
                LineMatrix feeder = feeder(each.getKey());
                LineMatrix reduced = feeder.times(draw.siemens()).plusIdentity().inverse();
                LineMatrix fromBus = draw.siemens().times(reduced);
                behind.put(each.getKey(), reduced);
                seen = seen.plus(fromBus);
                known = known.minus(fromBus.times(feeder.times(draw.amps())));
            }
        }
        LineValues open = nominal.minus(source.times(known));
        LineValues bus = behind.isEmpty()
                ? open
                : source.times(seen).plusIdentity().inverse().times(open);
        Map<String, LineValues> panels = new LinkedHashMap<>();
        draws.forEach((panel, draw) -> {
            LineValues arriving = bus.minus(feeder(panel).times(draw.amps()));
            LineMatrix reduced = behind.get(panel);
            panels.put(panel, reduced == null ? arriving : reduced.times(arriving));
        });
        return new Voltages(bus, panels);
    }
}
