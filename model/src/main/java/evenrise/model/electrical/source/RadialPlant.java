package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.PhaseSystem;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Phasors of a plant in the shape of a star: one source, a feeder to each panel, loads at the panels. Behind the source
 * stands its nominal voltage; its neutral is stiff, so that on three phases its zero-sequence impedance is the positive one. A
 * feeder's neutral joins all its one-pole loads.
 */
public final class RadialPlant {
    /** What the node behind the source is called, beside the panels. */
    public static final String SUPPLY = "supply";

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
        // SourceImpedance tells a leg of split-phase; between the legs there is three times as much, so currents that
        // leave by one leg and return by the other meet half a leg's more in each.
        Phasor mutual = system == PhaseSystem.SPLIT_PHASE ? source.complex().times(-0.5) : Phasor.ZERO;
        this.source = LineMatrix.coupled(system, source.complex(), mutual);
        this.feeders = Map.copyOf(feeders);
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

    /** Where every panel draws what {@code draws} says. Time: linear in the panels. */
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
