package evenrise.model.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Assignment;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Layout;
import evenrise.model.rules.RandomTree;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;

/**
 * Sources, feeders and breakers of random trees fail, trip and return; every reading is computed again from the script
 * alone: who is fed is found by walking up, what is drawn is summed from the panels upwards, transformer by transformer.
 */
@Tag("slow")
class TreeCurrentsTest {
    private static final String SEED = "20012";
    private static final double USUAL_MILLIS = 20;

    /** Loads with inrush, transformers with theirs. */
    private static Layout layout(int seed) {
        RandomTree tree = new RandomTree(seed, 0.5);
        Random random = new Random(seed);
        Project project = tree.project
                .with()
                .loads(tree.project.loads().stream()
                        .map(each -> each.with()
                                .inrushPeakAmps(OptionalDouble.of(100 * random.nextDouble()))
                                .inrushHalfMillis(1 + random.nextInt(500))
                                .build())
                        .toList())
                .nodes(tree.project.nodes().stream()
                        .map(each -> each.withTransformer(each.transformer()
                                .map(it -> it.with()
                                        .inrushPeakAmps(
                                                random.nextInt(4) > 0
                                                        ? OptionalDouble.of(500 * random.nextDouble())
                                                        : OptionalDouble.empty())
                                        .inrushHalfMillis(1 + random.nextInt(2000))
                                        .build())))
                        .toList())
                .build();
        return Layout.of(project, tree.plan);
    }

    private static EventScript script(Project project, int seed) {
        Random random = new Random(seed * 31L + 7);
        List<String> points = new ArrayList<>(List.of("supply"));
        project.panels().forEach(each -> points.add(each.id()));
        project.nodes().forEach(each -> points.add(each.id()));
        List<ScriptEvent> events = new ArrayList<>();
        double now = 0;
        for (int i = 0; i < 2 + random.nextInt(12); i++) {
            now += new double[] {0.01, 0.5, 1.5, 3, 9}[random.nextInt(5)];
            String point = points.get(random.nextInt(points.size()));
            String load =
                    project.loads().get(random.nextInt(project.loads().size())).id();
            switch (random.nextInt(4)) {
                case 0 ->
                    events.add(ScriptEvent.of(OptionalDouble.of(now), Happening.MAINS)
                            .voltage(random.nextBoolean() ? 0 : 100, List.of())
                            .atNode(point));
                case 1 ->
                    events.add(
                            ScriptEvent.of(OptionalDouble.of(now), trip(random)).atNode(point));
                default ->
                    events.add(
                            ScriptEvent.of(OptionalDouble.of(now), trip(random)).withLoad(load));
            }
        }
        return new EventScript("drawn", events);
    }

    private static Happening trip(Random random) {
        return random.nextBoolean() ? Happening.TRIP : Happening.RESET;
    }

    @Property(tries = 400, seed = SEED)
    void areThoseOfTheTreeWalkedAnew(@ForAll @IntRange(max = 5000) int seed) {
        Layout layout = layout(seed);
        EventScript script = script(layout.project(), seed);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout, Use.IDLE), script);

        Map<Double, Walk> walks = new HashMap<>();
        for (PhaseReading each : trace.readings()) {
            Walk walk = walks.computeIfAbsent(each.atSeconds(), now -> new Walk(layout, script, now));
            assertThat(each.drawnAmps())
                    .as("%s%s", each, RawEvent.text(script))
                    .isCloseTo(walk.amps(each.node(), each.phase()), within(1e-6));
            assertThat(each.boundAmps()).isGreaterThanOrEqualTo(each.drawnAmps() - 1e-6);
        }
    }

    /** The plant at one instant. */
    private static final class Walk {
        private final Project project;
        private final double now;
        private final Map<String, double[]> drawn = new HashMap<>();
        private final Map<String, Panel> panels = new HashMap<>();
        private final Map<String, DistributionNode> nodes = new HashMap<>();
        private final EventScript script;

        Walk(Layout layout, EventScript script, double now) {
            this.project = layout.project();
            this.script = script;
            this.now = now;
            project.panels().forEach(each -> panels.put(each.id(), each));
            project.nodes().forEach(each -> nodes.put(each.id(), each));
            drawn.put("supply", new double[3]);
            panels.keySet().forEach(id -> drawn.put(id, new double[3]));
            nodes.keySet().forEach(id -> drawn.put(id, new double[3]));
            for (Assignment each : layout.plan().assignments()) {
                Load load = project.loads().stream()
                        .filter(it -> it.id().equals(each.load()))
                        .findFirst()
                        .orElseThrow();
                double amps = amps(load, each.panel());
                for (Phase phase : layout.placement(load.id()).orElseThrow().phases()) {
                    double[] one = new double[3];
                    one[phase.ordinal()] = amps;
                    add(each.panel(), one);
                }
            }
            for (DistributionNode each : project.nodes()) {
                each.transformer().ifPresent(it -> energising(each, it));
            }
        }

        double amps(String node, Phase phase) {
            return drawn.get(node)[phase.ordinal()];
        }

        private void add(String at, double[] amps) {
            for (int i = 0; i < 3; i++) {
                drawn.get(at)[i] += amps[i];
            }
            DistributionNode node = nodes.get(at);
            if (at.equals("supply") || node != null && node.source().isPresent()) {
                return;
            }
            String above = above(at);
            add(above, node == null || node.transformer().isEmpty() ? amps : through(node, above, amps));
        }

        private String above(String at) {
            Optional<String> fedFrom = panels.containsKey(at)
                    ? panels.get(at).fedFrom()
                    : nodes.get(at).fedFrom();
            return fedFrom.orElse("supply");
        }

        private double[] through(DistributionNode node, String above, double[] e) {
            Transformer it = node.transformer().orElseThrow();
            double k = it.secondary().lineToNeutralVolts() / volts(above);
            double r = k / Math.sqrt(3);
            if (it.connection() == TransformerConnection.WYE_WYE) {
                return new double[] {k * e[0], k * e[1], k * e[2]};
            }
            if (it.connection() == TransformerConnection.DELTA_WYE) {
                return it.shiftDegrees() > 0
                        ? new double[] {r * (e[0] + e[2]), r * (e[1] + e[0]), r * (e[2] + e[1])}
                        : new double[] {r * (e[0] + e[1]), r * (e[1] + e[2]), r * (e[2] + e[0])};
            }
            List<Phase> primary = primary(it, above);
            double across = primary.size() == 1 ? 1 : system(above) == PhaseSystem.THREE_PHASE ? Math.sqrt(3) : 2;
            double[] drawnThere = new double[3];
            primary.forEach(phase -> drawnThere[phase.ordinal()] = k / across * (e[0] + e[1] + e[2]));
            return drawnThere;
        }

        private List<Phase> primary(Transformer it, String above) {
            List<Phase> all = system(above).phases();
            if (it.connection() != TransformerConnection.SINGLE) {
                return all;
            }
            return it.primaryPhases().isEmpty() ? all.subList(0, Math.min(2, all.size())) : it.primaryPhases();
        }

        private PhaseSystem system(String at) {
            if (at.equals("supply")) {
                return project.supply().system();
            }
            DistributionNode node = nodes.get(at);
            if (node != null && node.source().isPresent()) {
                return node.source().get().system();
            }
            return node != null && node.transformer().isPresent()
                    ? node.transformer().get().secondary().system()
                    : system(above(at));
        }

        private double volts(String at) {
            if (at.equals("supply")) {
                return project.supply().lineToNeutralVolts();
            }
            DistributionNode node = nodes.get(at);
            if (node != null && node.source().isPresent()) {
                return node.source().get().lineToNeutralVolts();
            }
            return node != null && node.transformer().isPresent()
                    ? node.transformer().get().secondary().lineToNeutralVolts()
                    : volts(above(at));
        }

        /** Nothing while it is off; its inrush since it came back, where it was off for long enough. */
        private double amps(Load load, String panel) {
            double base = Math.sqrt(2) * load.idleAmps();
            double excess = Math.max(0, load.inrushAmps() - base);
            double off = Double.NaN;
            double anew = Double.NaN;
            for (ScriptEvent each : script.events()) {
                double at = each.atSeconds().getAsDouble();
                if (at > now) {
                    break;
                }
                boolean isOn = isFed(panel, each) && isClosed(load.id(), each);
                if (!isOn && Double.isNaN(off)) {
                    off = at;
                } else if (isOn && !Double.isNaN(off)) {
                    anew = (at - off) * 1000 > USUAL_MILLIS + 1e-6 ? at : anew;
                    off = Double.NaN;
                }
            }
            if (!Double.isNaN(off)) {
                return 0;
            }
            return Double.isNaN(anew)
                    ? base
                    : base + excess * Math.pow(2, -(now - anew) * 1000 / load.inrushHalfMillis());
        }

        private void energising(DistributionNode node, Transformer it) {
            double since = Double.NaN;
            boolean was = true;
            for (ScriptEvent each : script.events()) {
                double at = each.atSeconds().getAsDouble();
                if (at > now) {
                    break;
                }
                boolean isFed = isFed(node.id(), each);
                since = !isFed ? Double.NaN : was ? since : at;
                was = isFed;
            }
            if (Double.isNaN(since) || it.inrushPeakAmps().isEmpty()) {
                return;
            }
            double amps = it.inrushPeakAmps().getAsDouble()
                    * Math.pow(2, -(now - since) * 1000 / it.inrushHalfMillis().getAsDouble());
            double[] drawnThere = new double[3];
            String above = above(node.id());
            primary(it, above).forEach(phase -> drawnThere[phase.ordinal()] = amps);
            add(above, drawnThere);
        }

        /** Whether a point and all above it are on, once an event has happened. */
        private boolean isFed(String point, ScriptEvent last) {
            DistributionNode node = nodes.get(point);
            boolean isRoot =
                    point.equals("supply") || node != null && node.source().isPresent();
            return isOn(point, last) && (isRoot || isFed(above(point), last));
        }

        private boolean isOn(String point, ScriptEvent last) {
            boolean passes = true;
            boolean closed = true;
            for (ScriptEvent each : script.events()) {
                if (each.node().equals(Optional.of(point))) {
                    passes = each.event() == Happening.MAINS
                            ? each.voltagePercent().getAsDouble() > 0
                            : passes;
                    closed = each.event() == Happening.TRIP ? false : each.event() == Happening.RESET ? true : closed;
                }
                if (each == last) {
                    break;
                }
            }
            return passes && closed;
        }

        private boolean isClosed(String load, ScriptEvent last) {
            boolean closed = true;
            for (ScriptEvent each : script.events()) {
                closed = each.load().equals(Optional.of(load)) ? each.event() == Happening.RESET : closed;
                if (each == last) {
                    break;
                }
            }
            return closed;
        }
    }
}
