package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What transformers draw, held against the circuit of their windings ({@link Windings}) on random trees. A running current or
 * an envelope below the circuit's would hide an overload; where nothing is rounded up, the two are the same.
 */
@Tag("random")
class TransformerTreesTest {
    private static final int TREES = 300;
    private static final double SLACK = 1 + 1e-9;

    /** Poles of a load in order, their phases and the currents that flow in them. */
    private interface PoleCurrents extends BiFunction<Load, Phasor[], Phasor[]> {}

    private static Map<String, Phasor[]> circuit(RandomTree tree, PoleCurrents currents) {
        Windings windings = new Windings(tree.project);
        Layout layout = Layout.of(tree.project, tree.plan);
        Map<String, Phasor[]> panels = new HashMap<>();
        for (Placement each : layout.placements()) {
            String panel = each.assignment().panel();
            Phasor[] volts = windings.volts(panel);
            Phasor[] ofPoles =
                    each.phases().stream().map(phase -> volts[phase.ordinal()]).toArray(Phasor[]::new);
            Phasor[] amps = currents.apply(each.load(), ofPoles);
            Phasor[] sums = panels.computeIfAbsent(panel, any -> new Phasor[] {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO});
            for (int pole = 0; pole < amps.length; pole++) {
                int line = each.phases().get(pole).ordinal();
                sums[line] = sums[line].plus(amps[pole]);
            }
        }
        return windings.lines(panels);
    }

    /** Each pole behind its own voltage to neutral; of two poles behind the voltage between them, and back. */
    private static Phasor[] fundamentals(Load load, Phasor[] volts) {
        double r = load.harmonicRatio();
        double amps = load.runningAmps() / Math.sqrt(1 + r * r);
        double lag = Lag.of(load).radians();
        if (volts.length == 2) {
            double angle = volts[0].plus(volts[1].times(-1)).angleRadians();
            return new Phasor[] {Phasor.polar(amps, angle - lag), Phasor.polar(-amps, angle - lag)};
        }
        Phasor[] poles = new Phasor[volts.length];
        for (int i = 0; i < poles.length; i++) {
            poles[i] = Phasor.polar(amps, volts[i].angleRadians() - lag);
        }
        return poles;
    }

    /** At whatever angle against each other; of two poles one current. */
    private static Phasor[] thirds(Load load, Phasor[] volts, Random random) {
        double r = load.harmonicRatio();
        double amps = r * load.runningAmps() / Math.sqrt(1 + r * r);
        Phasor[] poles = new Phasor[volts.length];
        for (int i = 0; i < poles.length; i++) {
            poles[i] = Phasor.polar(amps, 2 * Math.PI * random.nextDouble());
        }
        if (poles.length == 2) {
            poles[1] = poles[0].times(-1);
        }
        return poles;
    }

    /** The crest of the base, of either sign; of two poles one current. */
    private static Phasor[] instants(Load load, Phasor[] volts, Random random) {
        Phasor[] poles = new Phasor[volts.length];
        for (int i = 0; i < poles.length; i++) {
            poles[i] = new Phasor((random.nextBoolean() ? 1 : -1) * Math.sqrt(2) * load.idleAmps(), 0);
        }
        if (poles.length == 2) {
            poles[1] = poles[0].times(-1);
        }
        return poles;
    }

    private static List<NodeFigures> figures(RandomTree tree) {
        return Layout.of(tree.project, tree.plan).nodes();
    }

    @Test
    void runningCurrentsAreNeverBelowTheCircuits() {
        for (int seed = 0; seed < TREES; seed++) {
            RandomTree tree = new RandomTree(seed, 1.5);
            Random random = new Random(seed);
            Map<String, Phasor[]> fundamental = circuit(tree, TransformerTreesTest::fundamentals);
            Map<String, Phasor[]> third = circuit(tree, (load, volts) -> thirds(load, volts, random));
            for (NodeFigures node : figures(tree)) {
                for (Map.Entry<Phase, Double> each : node.runningAmps().entrySet()) {
                    int line = each.getKey().ordinal();
                    double amps = Math.hypot(
                            fundamental.get(node.node())[line].length(), third.get(node.node())[line].length());
                    assertThat(each.getValue() * SLACK + 1e-9)
                            .as("%s, %s phase %s", tree.project.name(), node.node(), each.getKey())
                            .isGreaterThanOrEqualTo(amps);
                }
            }
        }
    }

    @Test
    void envelopesAreNeverBelowWhatFlowsAtAnInstant() {
        for (int seed = 0; seed < TREES; seed++) {
            RandomTree tree = new RandomTree(seed, 0);
            Random random = new Random(seed);
            List<NodeFigures> figures = figures(tree);
            for (int draw = 0; draw < 20; draw++) {
                Map<String, Phasor[]> now = circuit(tree, (load, volts) -> instants(load, volts, random));
                for (NodeFigures node : figures) {
                    for (PhasePeak peak : node.peaks()) {
                        assertThat(peak.amps() * SLACK + 1e-9)
                                .as("%s, %s phase %s", tree.project.name(), node.node(), peak.phase())
                                .isGreaterThanOrEqualTo(Math.abs(
                                        now.get(node.node())[peak.phase().ordinal()].real()));
                    }
                }
            }
        }
    }

    /** Without harmonics phasors are exact: the neutral is what the lines do not return between themselves. */
    @Test
    void neutralsWithoutHarmonicsAreTheCircuits() {
        int carrying = 0;
        for (int seed = 0; seed < TREES; seed++) {
            RandomTree tree = new RandomTree(seed, 0);
            Map<String, Phasor[]> lines = circuit(tree, TransformerTreesTest::fundamentals);
            for (NodeFigures node : figures(tree)) {
                Phasor[] at = lines.get(node.node());
                double amps = at[0].plus(at[1]).plus(at[2]).length();
                assertThat(node.neutralAmps())
                        .as("%s, %s", tree.project.name(), node.node())
                        .isCloseTo(amps, within(1e-6));
                carrying += amps > 1 ? 1 : 0;
            }
        }
        assertThat(carrying).isGreaterThan(TREES);
    }

    /** A supply that feeds delta-wye transformers only, without harmonics: what each draws is exact. */
    @Test
    void runningCurrentsOfOneDeltaWyeAreTheCircuits() {
        int seen = 0;
        for (int seed = 0; seed < 40 * TREES && seen < TREES; seed++) {
            RandomTree tree = new RandomTree(seed, 0);
            Layout layout = Layout.of(tree.project, tree.plan);
            if (layout.nodeLoads().direct(Distribution.SUPPLY).size() > 0
                    || layout.distribution().transformersAt(Distribution.SUPPLY).size() != 1) {
                continue;
            }
            int below =
                    layout.distribution().transformersAt(Distribution.SUPPLY).get(0);
            boolean isDelta = tree.project.nodes().stream()
                    .filter(each -> each.id()
                            .equals(layout.distribution().points().get(below).id()))
                    .anyMatch(each -> each.transformer().orElseThrow().connection()
                            == evenrise.model.project.TransformerConnection.DELTA_WYE);
            if (!isDelta) {
                continue;
            }
            seen++;
            Phasor[] lines = circuit(tree, TransformerTreesTest::fundamentals).get("supply");
            layout.nodes()
                    .get(Distribution.SUPPLY)
                    .runningAmps()
                    .forEach(
                            (phase, amps) -> assertThat(amps).isCloseTo(lines[phase.ordinal()].length(), within(1e-6)));
        }
        assertThat(seen).isGreaterThan(20);
    }
}
