package evenrise.model.nodal;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.conductor.ConductorImpedance;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Cable;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SupplySource;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plant and its plan as a network of nodes, solved without any of the shortcuts of the review: every conductor of source,
 * feeders, neutrals and branches is a branch of its own, every load stands between its own terminals. Cables state their
 * conductors' temperature here, so that nothing is guessed.
 *
 * <p>The source: on three phases a voltage behind an impedance in each line, with a stiff neutral. On split-phase two legs and
 * a tap: between the legs there is the rating's whole impedance, from a leg to the tap a third of it (SourceImpedance says why),
 * which an impedance of minus a sixth in the tap does.
 */
public final class NodalPlant {
    private final Layout layout;
    private final Project project;
    private final PhaseSystem system;
    private final Circuit circuit = new Circuit();
    private final Map<Phase, Integer> supplyLines = new EnumMap<>(Phase.class);
    private final int supplyNeutral;
    private final Map<Phase, Integer> supplyBranches = new EnumMap<>(Phase.class);
    private final Map<String, Map<Phase, Integer>> lines = new HashMap<>();
    private final Map<String, Integer> neutrals = new HashMap<>();
    private final Map<String, Map<Phase, Integer>> lineBranches = new HashMap<>();
    private final Map<String, Integer> neutralBranches = new HashMap<>();
    private final Map<String, Map<Phase, Integer>> terminals = new HashMap<>();
    private final Map<String, Integer> loadNeutrals = new HashMap<>();
    private final int harmonic;

    /** At the fundamental, with the source that the project states, or a stiff one. */
    public static NodalPlant of(Layout layout, boolean hasSource) {
        return new NodalPlant(layout, hasSource, 1);
    }

    /** At a multiple of the fundamental, where the source drives nothing. */
    public static NodalPlant ofHarmonic(Layout layout, int harmonic) {
        return new NodalPlant(layout, true, harmonic);
    }

    private NodalPlant(Layout layout, boolean hasSource, int harmonic) {
        this.layout = layout;
        this.project = layout.project();
        this.system = project.supply().system();
        this.harmonic = harmonic;
        Impedance source = hasSource ? source() : Circuit.NEXT_TO_NOTHING;
        boolean isSplit = system == PhaseSystem.SPLIT_PHASE && hasSource;
        int tap = 0;
        if (isSplit) {
            tap = circuit.node();
            circuit.impedance(tap, 0, source.times(-1.0 / 6));
        }
        this.supplyNeutral = 0;
        for (Phase phase : system.phases()) {
            int line = circuit.node();
            Phasor volts = harmonic == 1 ? nominal(phase) : Phasor.ZERO;
            supplyLines.put(phase, line);
            supplyBranches.put(phase, circuit.source(tap, line, volts, isSplit ? source.times(0.5) : source));
        }
        project.panels().forEach(this::panel);
        layout.placements().stream().filter(Placement::fits).forEach(this::branch);
    }

    /** On split-phase between the legs, else of each line. */
    private Impedance source() {
        SupplySource it = project.electrical().orElseThrow().source().orElseThrow();
        double volts = project.supply().lineToNeutralVolts();
        double between = system == PhaseSystem.SPLIT_PHASE ? 2 * volts : volts;
        double ohms =
                switch (it.kind()) {
                    case UTILITY -> between / it.faultAmps().orElseThrow();
                    case TRANSFORMER ->
                        it.impedancePercent().orElseThrow()
                                / 100
                                * rated(between, it.ratedKva().orElseThrow());
                    case GENERATOR ->
                        it.subtransientReactancePercent().orElseThrow()
                                / 100
                                * rated(between, it.ratedKva().orElseThrow());
                    case UPS -> throw new IllegalArgumentException("no steady impedance");
                };
        double angle = Math.atan(it.xOverR().orElseThrow());
        return at(new Impedance(ohms * Math.cos(angle), ohms * Math.sin(angle)));
    }

    private double rated(double volts, double kva) {
        return (system == PhaseSystem.THREE_PHASE ? 3 : 1) * volts * volts / (1000 * kva);
    }

    private void panel(Panel panel) {
        Optional<Cable> cable = panel.feeder().flatMap(Feeder::cable);
        Impedance line = cable.map(this::conductor).orElse(Circuit.NEXT_TO_NOTHING);
        int neutral = circuit.node();
        neutrals.put(panel.id(), neutral);
        neutralBranches.put(
                panel.id(), circuit.impedance(neutral, supplyNeutral, line.times(1 / panel.neutralFactor())));
        Map<Phase, Integer> nodes = new EnumMap<>(Phase.class);
        Map<Phase, Integer> branches = new EnumMap<>(Phase.class);
        for (Phase phase : system.phases()) {
            nodes.put(phase, circuit.node());
            branches.put(phase, circuit.impedance(supplyLines.get(phase), nodes.get(phase), line));
        }
        lines.put(panel.id(), nodes);
        lineBranches.put(panel.id(), branches);
    }

    private void branch(Placement each) {
        Load load = each.load();
        String panel = each.assignment().panel();
        Impedance wire = load.circuit()
                .flatMap(circuit -> circuit.cable())
                .map(this::conductor)
                .orElse(Circuit.NEXT_TO_NOTHING);
        Map<Phase, Integer> nodes = new EnumMap<>(Phase.class);
        for (Phase phase : each.phases()) {
            nodes.put(phase, circuit.node());
            circuit.impedance(lines.get(panel).get(phase), nodes.get(phase), wire);
        }
        terminals.put(load.id(), nodes);
        if (each.phases().size() == 1) {
            loadNeutrals.put(load.id(), circuit.node());
            circuit.impedance(loadNeutrals.get(load.id()), neutrals.get(panel), wire);
        }
    }

    /** Adds what a load draws. */
    public NodalPlant draw(String load, Drawing drawing) {
        List<Phase> phases = layout.placement(load).orElseThrow().phases();
        Map<Phase, Integer> own = terminals.get(load);
        Phasor volts = phases.size() == 2
                ? nominal(phases.get(0)).plus(nominal(phases.get(1)).times(-1))
                : nominal(phases.get(0));
        if (drawing.amps() == 0) {
            return this;
        }
        double ohms = volts.length() / drawing.amps();
        Impedance impedance = new Impedance(
                Math.max(1e-12, ohms * Math.cos(drawing.lagRadians())), ohms * Math.sin(drawing.lagRadians()));
        if (phases.size() == 3) {
            int star = circuit.node();
            for (Phase phase : phases) {
                between(own.get(phase), star, nominal(phase), impedance, drawing);
            }
            circuit.impedance(star, 0, new Impedance(1e9, 0));
        } else {
            int back = phases.size() == 2 ? own.get(phases.get(1)) : loadNeutrals.get(load);
            between(own.get(phases.get(0)), back, volts, impedance, drawing);
        }
        return this;
    }

    private void between(int from, int to, Phasor volts, Impedance impedance, Drawing drawing) {
        if (drawing.isImpedance()) {
            circuit.impedance(from, to, impedance);
        } else {
            circuit.current(from, to, Phasor.polar(drawing.amps(), volts.angleRadians() - drawing.lagRadians()));
        }
    }

    /** Adds a harmonic current of a load, the same in each of its lines, at an angle of its own. */
    public NodalPlant drawHarmonic(String load, double amps, double radians) {
        List<Phase> phases = layout.placement(load).orElseThrow().phases();
        Map<Phase, Integer> own = terminals.get(load);
        if (phases.size() > 2) {
            // Triplen currents of three lines without a neutral have no way back.
            return this;
        }
        int back = phases.size() == 2 ? own.get(phases.get(1)) : loadNeutrals.get(load);
        circuit.current(own.get(phases.get(0)), back, Phasor.polar(amps, radians));
        return this;
    }

    /** A bolted fault at a panel, from a line to another or, where {@code to} is empty, to neutral. */
    public int fault(String panel, Phase from, Optional<Phase> to) {
        Map<Phase, Integer> here = lines.get(panel);
        int back = to.map(here::get).orElseGet(() -> neutrals.get(panel));
        return circuit.impedance(here.get(from), back, Circuit.NEXT_TO_NOTHING);
    }

    public NodalPlant solve() {
        circuit.solve();
        return this;
    }

    public double faultAmps(int fault) {
        return circuit.amps(fault).length();
    }

    /** At the supply, to neutral or between two lines. */
    public Phasor supplyVolts(Phase from, Optional<Phase> to) {
        return circuit.volts(supplyLines.get(from), to.map(supplyLines::get).orElse(supplyNeutral));
    }

    public Phasor panelVolts(String panel, Phase from, Optional<Phase> to) {
        Map<Phase, Integer> here = lines.get(panel);
        return circuit.volts(here.get(from), to.map(here::get).orElseGet(() -> neutrals.get(panel)));
    }

    /** At a load's own terminals. */
    public Phasor loadVolts(String load, Phase from, Optional<Phase> to) {
        Map<Phase, Integer> own = terminals.get(load);
        return circuit.volts(own.get(from), to.map(own::get).orElseGet(() -> loadNeutrals.get(load)));
    }

    public Phasor supplyAmps(Phase phase) {
        return circuit.amps(supplyBranches.get(phase));
    }

    public Phasor feederAmps(String panel, Phase phase) {
        return circuit.amps(lineBranches.get(panel).get(phase));
    }

    /** From the panel towards the supply. */
    public Phasor neutralAmps(String panel) {
        return circuit.amps(neutralBranches.get(panel));
    }

    public Phasor nominal(Phase phase) {
        return Phasor.polar(
                project.supply().lineToNeutralVolts(),
                -2 * Math.PI * phase.ordinal() / system.phases().size());
    }

    private Impedance conductor(Cable cable) {
        ConductorSize size = ConductorSize.of(cable.size()).orElseThrow();
        double celsius = cable.conductorCelsius().orElseThrow();
        return at(ConductorImpedance.perKilometre(size, cable.material(), cable.conduit(), celsius)
                .times(cable.lengthMetres() / 1000 / cable.sets()));
    }

    private Impedance at(Impedance fundamental) {
        return new Impedance(fundamental.resistanceOhms(), harmonic * fundamental.reactanceOhms());
    }
}
