package evenrise.model.nodal;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.conductor.ConductorImpedance;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Cable;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SupplySource;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A distribution of nodes, transformers and sources as a circuit, conductor by conductor and winding by winding: every line
 * and every neutral is a branch, a transformer is its windings with ampere-turns equal and its impedance in each secondary
 * one. It knows nothing of matrices between lines or of sequences. The neutral of every source and of every transformer but
 * wye-wye is tied to earth, where nothing else is, so that no current flows there; wye-wye passes its neutral on.
 */
public final class NodalTree {
    private static final Impedance TIE = Circuit.NEXT_TO_NOTHING;

    private final Project project;
    private final Layout layout;
    private final boolean hasSources;
    private final double celsius;
    private final double transformerRatio;
    private final Circuit circuit = new Circuit();
    private final Map<String, DistributionNode> nodes = new HashMap<>();
    private final Map<String, Panel> panels = new HashMap<>();
    private final Map<String, Map<Phase, Integer>> lines = new HashMap<>();
    private final Map<String, Integer> neutrals = new HashMap<>();
    private final Map<String, PhaseSystem> systems = new HashMap<>();
    private final Map<String, Double> volts = new HashMap<>();
    private final Map<String, Double> lead = new HashMap<>();

    /** As everything works. */
    public static NodalTree of(Layout layout, boolean hasSources) {
        return new NodalTree(layout, hasSources, Double.NaN, 1);
    }

    /** With conductors of one temperature, and transformers at a part of their impedance. */
    public static NodalTree ofFaults(Layout layout, double celsius, double transformerRatio) {
        return new NodalTree(layout, true, celsius, transformerRatio);
    }

    private NodalTree(Layout layout, boolean hasSources, double celsius, double transformerRatio) {
        this.layout = layout;
        this.project = layout.project();
        this.hasSources = hasSources;
        this.celsius = celsius;
        this.transformerRatio = transformerRatio;
        project.nodes().forEach(each -> nodes.put(each.id(), each));
        project.panels().forEach(each -> panels.put(each.id(), each));
        build("supply");
        nodes.keySet().forEach(this::build);
        panels.keySet().forEach(this::build);
    }

    private void build(String id) {
        if (lines.containsKey(id)) {
            return;
        }
        boolean isTop = id.equals("supply")
                || nodes.containsKey(id) && nodes.get(id).source().isPresent();
        if (isTop) {
            source(id);
            return;
        }
        String above = (nodes.containsKey(id)
                        ? nodes.get(id).fedFrom()
                        : panels.get(id).fedFrom())
                .orElse("supply");
        build(above);
        Optional<Feeder> feeder =
                nodes.containsKey(id) ? nodes.get(id).feeder() : panels.get(id).feeder();
        Optional<Transformer> transformer =
                nodes.containsKey(id) ? nodes.get(id).transformer() : Optional.empty();
        double neutralFactor = nodes.containsKey(id)
                ? nodes.get(id).neutralFactor()
                : panels.get(id).neutralFactor();
        Map<Phase, Integer> primary = run(lines.get(above), feeder.flatMap(Feeder::cable));
        int primaryNeutral = conductor(
                neutrals.get(above), feeder.flatMap(Feeder::cable), transformer.isPresent() ? 1 : neutralFactor);
        if (transformer.isEmpty()) {
            put(id, primary, primaryNeutral, systems.get(above), volts.get(above), lead.get(above));
        } else {
            transformer(id, transformer.get(), above, primary, primaryNeutral, neutralFactor);
        }
    }

    private void source(String id) {
        boolean isSupply = id.equals("supply");
        PhaseSystem system = isSupply
                ? project.supply().system()
                : nodes.get(id).source().orElseThrow().system();
        double size = isSupply
                ? project.supply().lineToNeutralVolts()
                : nodes.get(id).source().orElseThrow().lineToNeutralVolts();
        Optional<SupplySource> behind = isSupply
                ? project.electrical().orElseThrow().source()
                : nodes.get(id).source().orElseThrow().behind();
        double ohms = size / behind.orElseThrow().faultAmps().orElseThrow();
        double angle = Math.atan(behind.orElseThrow().xOverR().orElseThrow());
        Impedance own = hasSources ? new Impedance(ohms * Math.cos(angle), ohms * Math.sin(angle)) : TIE;
        Map<Phase, Integer> here = new EnumMap<>(Phase.class);
        for (Phase phase : system.phases()) {
            here.put(phase, circuit.node());
            circuit.source(0, here.get(phase), Phasor.polar(size, angle(system, phase)), own);
        }
        put(id, here, 0, system, size, 0.0);
    }

    private void transformer(
            String id, Transformer it, String above, Map<Phase, Integer> primary, int primaryNeutral, double factor) {
        PhaseSystem system = it.secondary().system();
        double wanted = it.secondary().lineToNeutralVolts();
        double base = (system == PhaseSystem.THREE_PHASE ? 3 : system == PhaseSystem.SPLIT_PHASE ? 4 : 1)
                * wanted
                * wanted
                / (1000 * it.ratedKva().orElseThrow());
        double ohms = transformerRatio * base * it.impedancePercent().orElseThrow() / 100;
        double angle = Math.atan(it.xOverR().orElseThrow());
        Impedance own = new Impedance(ohms * Math.cos(angle), ohms * Math.sin(angle));
        Map<Phase, Integer> legs = new EnumMap<>(Phase.class);
        system.phases().forEach(phase -> legs.put(phase, circuit.node()));
        int star = circuit.node();
        double turned = lead.get(above);
        if (it.connection() == TransformerConnection.SINGLE) {
            Phase from = it.primaryPhases().get(0);
            OptionalDouble across = it.primaryPhases().size() > 1
                    ? OptionalDouble.of(
                            difference(above, from, it.primaryPhases().get(1)))
                    : OptionalDouble.empty();
            int back = it.primaryPhases().size() > 1
                    ? primary.get(it.primaryPhases().get(1))
                    : primaryNeutral;
            double turns = wanted / across.orElse(volts.get(above));
            // Half of what is between the legs in each, and less in the tap: of a leg a third of the whole.
            Impedance each = system == PhaseSystem.SPLIT_PHASE ? own.times(0.5) : own;
            int tap = system == PhaseSystem.SPLIT_PHASE ? circuit.node() : star;
            circuit.windings(primary.get(from), back, legs.get(Phase.A), tap, turns, each);
            if (system == PhaseSystem.SPLIT_PHASE) {
                circuit.windings(primary.get(from), back, tap, legs.get(Phase.B), turns, each);
                circuit.impedance(tap, star, own.times(-1.0 / 6));
            }
            turned += across.isPresent()
                    ? between(above, from, it.primaryPhases().get(1))
                    : angle(systems.get(above), from);
        } else {
            boolean isDelta = it.connection() == TransformerConnection.DELTA_WYE;
            List<Phase> all = List.of(Phase.A, Phase.B, Phase.C);
            for (int leg = 0; leg < 3; leg++) {
                Phase from = all.get(leg);
                Phase to = all.get((leg + (it.shiftDegrees() > 0 ? 1 : 2)) % 3);
                double across = isDelta ? difference(above, from, to) : volts.get(above);
                circuit.windings(
                        primary.get(from),
                        isDelta ? primary.get(to) : primaryNeutral,
                        legs.get(from),
                        star,
                        wanted / across,
                        own);
            }
            turned += isDelta ? Math.toRadians(it.shiftDegrees()) : 0;
        }
        circuit.impedance(star, 0, TIE);
        int neutral = conductor(star, it.secondaryCable(), factor);
        put(id, run(legs, it.secondaryCable()), neutral, system, wanted, turned);
    }

    private double difference(String at, Phase from, Phase to) {
        return unit(at, from).minus(unit(at, to)).length() * volts.get(at);
    }

    private double between(String at, Phase from, Phase to) {
        return unit(at, from).minus(unit(at, to)).angleRadians();
    }

    private Phasor unit(String at, Phase phase) {
        return Phasor.polar(1, angle(systems.get(at), phase));
    }

    private static double angle(PhaseSystem system, Phase phase) {
        return -2 * Math.PI * phase.ordinal() / system.phases().size();
    }

    private void put(String id, Map<Phase, Integer> here, int neutral, PhaseSystem system, double size, double turned) {
        lines.put(id, here);
        neutrals.put(id, neutral);
        systems.put(id, system);
        volts.put(id, size);
        lead.put(id, turned);
    }

    private Map<Phase, Integer> run(Map<Phase, Integer> from, Optional<Cable> cable) {
        Map<Phase, Integer> to = new EnumMap<>(Phase.class);
        from.forEach((phase, node) -> to.put(phase, conductor(node, cable, 1)));
        return to;
    }

    private int conductor(int from, Optional<Cable> cable, double factor) {
        int to = circuit.node();
        circuit.impedance(
                from, to, cable.map(each -> ohms(each).times(1 / factor)).orElse(TIE));
        return to;
    }

    private Impedance ohms(Cable cable) {
        ConductorSize size = ConductorSize.of(cable.size()).orElseThrow();
        double at = Double.isNaN(celsius) ? cable.conductorCelsius().orElseThrow() : celsius;
        return ConductorImpedance.perKilometre(size, cable.material(), cable.conduit(), at)
                .times(cable.lengthMetres() / 1000 / cable.sets());
    }

    /** Adds what a load draws at its panel. */
    public NodalTree draw(Placement placement, Drawing drawing) {
        String panel = placement.assignment().panel();
        List<Phase> phases = placement.phases();
        Map<Phase, Integer> own = lines.get(panel);
        if (phases.size() == 3) {
            int star = circuit.node();
            phases.forEach(phase -> between(own.get(phase), star, nominal(panel, phase), drawing));
            circuit.impedance(star, 0, new Impedance(1e9, 0));
        } else {
            Phasor from = nominal(panel, phases.get(0));
            int back = phases.size() == 2 ? own.get(phases.get(1)) : neutrals.get(panel);
            between(
                    own.get(phases.get(0)),
                    back,
                    phases.size() == 2 ? from.minus(nominal(panel, phases.get(1))) : from,
                    drawing);
        }
        return this;
    }

    private void between(int from, int to, Phasor voltage, Drawing drawing) {
        if (drawing.isImpedance()) {
            double ohms = voltage.length() / drawing.amps();
            circuit.impedance(
                    from,
                    to,
                    new Impedance(
                            Math.max(1e-12, ohms * Math.cos(drawing.lagRadians())),
                            ohms * Math.sin(drawing.lagRadians())));
        } else {
            circuit.current(from, to, Phasor.polar(drawing.amps(), voltage.angleRadians() - drawing.lagRadians()));
        }
    }

    /** Of a line to neutral at a point where nothing draws. */
    public Phasor nominal(String id, Phase phase) {
        return Phasor.polar(volts.get(id), lead.get(id) + angle(systems.get(id), phase));
    }

    /** A bolted fault at a point, of a line to another or, where {@code to} is empty, to neutral. */
    public int fault(String id, Phase from, Optional<Phase> to) {
        int back = to.map(lines.get(id)::get).orElse(neutrals.get(id));
        return circuit.impedance(lines.get(id).get(from), back, TIE);
    }

    /** A bolted fault of all lines together; the number of its first. */
    public int faultOfAll(String id) {
        int star = circuit.node();
        int first = -1;
        for (int line : lines.get(id).values()) {
            int number = circuit.impedance(line, star, TIE);
            first = first < 0 ? number : first;
        }
        circuit.impedance(star, 0, new Impedance(1e9, 0));
        return first;
    }

    public NodalTree solve() {
        circuit.solve();
        return this;
    }

    public double amps(int branch) {
        return circuit.amps(branch).length();
    }

    public Phasor volts(String id, Phase from, Optional<Phase> to) {
        return circuit.volts(lines.get(id).get(from), to.map(lines.get(id)::get).orElse(neutrals.get(id)));
    }

    public Layout layout() {
        return layout;
    }
}
