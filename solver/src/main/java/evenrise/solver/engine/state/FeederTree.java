package evenrise.solver.engine.state;

import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * What feeds what, by index: node 0 is the supply, node {@code panel + 1} a panel, what follows a further node. For each
 * panel, which nodes carry what sits there as it is, and how much of it nodes on the far side of transformers see.
 */
public final class FeederTree {
    /** No part of a load. */
    static final int NO_SHARE = -1;

    private static final int MASKS = 1 << Winding.PHASES;

    /** By phases as a mask: a load as it is on each of them, as {@link Seen#shares}. */
    private static final int[][] WHOLE = new int[MASKS][];

    static {
        Arrays.setAll(
                WHOLE,
                mask -> IntStream.range(0, Winding.PHASES)
                        .map(phase -> (mask >> phase & 1) != 0 ? 0 : NO_SHARE)
                        .toArray());
    }

    public final int nodeCount;
    /** The supply and what is no panel and fed by nothing. */
    public final int[] sources;
    /** By panel: nodes that carry its current at its own voltage, itself among them. */
    public final int[][] carriers;
    /** By node: the supply or source that feeds it in the end. */
    final int[] root;
    /** By panel: node whose voltages it has, of a source or behind a transformer. */
    public final int[] origin;
    /** By node: panels that it feeds, also through transformers. */
    public final int[][] panelsBelow;
    /** By node: whether it is a transformer's secondary or a distribution, neither panel nor source. */
    final boolean[] isInner;

    final PhaseSystem[] systems;
    /** By node: what it draws, where it is a transformer's secondary; else null. */
    final Winding[] windings;
    /** Transformers' nodes, each before whatever feeds it. */
    final int[] transformers;
    /** By transformer's node: nodes that carry what it draws. */
    final int[][] drawnAt;
    /** By transformer's node: the transformer that it is fed through, or {@link CompiledProject#NONE}. */
    final int[] transformerAbove;
    /** Different parts of loads that are seen somewhere; the first is the whole. */
    final double[] shares;

    private final Seen[][][] seen;
    private final Returned[][][] returned;
    private final double[] volts;

    /**
     * What a node beyond a transformer sees of a load.
     *
     * @param shares by phase: position in {@link #shares}, or {@link #NO_SHARE}
     */
    record Seen(int node, int[] shares) {}

    /** What of a load returns by the neutral of a node beyond a transformer, as of a one-pole load. */
    record Returned(int node, int phase, double part) {}

    private record OnPhase(Phase phase, double part) {}

    FeederTree(Project project) {
        Distribution distribution = Distribution.of(project);
        List<Point> points = distribution.points();
        nodeCount = points.size();
        int panels = project.panels().size();
        systems = points.stream().map(Point::system).toArray(PhaseSystem[]::new);
        volts = points.stream().mapToDouble(Point::lineToNeutralVolts).toArray();
        sources = IntStream.range(0, nodeCount)
                .filter(node -> node == 0 || points.get(node).isFurtherSource())
                .toArray();
        root = IntStream.range(0, nodeCount).map(distribution::root).toArray();
        isInner = new boolean[nodeCount];
        windings = new Winding[nodeCount];
        drawnAt = new int[nodeCount][];
        transformerAbove = new int[nodeCount];
        for (int node = 0; node < nodeCount; node++) {
            Point point = points.get(node);
            isInner[node] = node > panels && !point.isFurtherSource();
            if (point.transformer().isPresent()) {
                Point parent = points.get(point.parent());
                windings[node] = new Winding(
                        point.node().orElseThrow().transformer().orElseThrow(),
                        parent.system(),
                        point.transformer().get());
                drawnAt[node] = distribution.onward(parent.index()).stream()
                        .mapToInt(Integer::intValue)
                        .toArray();
                transformerAbove[node] =
                        points.get(parent.origin()).transformer().isPresent() ? parent.origin() : CompiledProject.NONE;
            }
        }
        int[] topDown = distribution.topDown();
        List<Integer> bottomUp = new ArrayList<>(Arrays.stream(topDown)
                .filter(node -> windings[node] != null)
                .boxed()
                .toList());
        Collections.reverse(bottomUp);
        transformers = bottomUp.stream().mapToInt(Integer::intValue).toArray();
        carriers = new int[panels][];
        origin = new int[panels];
        seen = new Seen[panels][MASKS][];
        returned = new Returned[panels][MASKS][];
        Map<Double, Integer> known = new HashMap<>();
        List<Double> parts = new ArrayList<>(List.of(1.0));
        known.put(1.0, 0);
        for (int panel = 0; panel < panels; panel++) {
            carriers[panel] = distribution.onward(panel + 1).stream()
                    .mapToInt(Integer::intValue)
                    .toArray();
            origin[panel] = points.get(panel + 1).origin();
            for (int mask = 1; mask < MASKS; mask++) {
                passOn(points, distribution, panel, mask, known, parts);
            }
        }
        shares = parts.stream().mapToDouble(Double::doubleValue).toArray();
        panelsBelow = new int[nodeCount][];
        for (int node = 0; node < nodeCount; node++) {
            int above = node;
            panelsBelow[node] = IntStream.range(0, panels)
                    .filter(panel -> feeds(points, above, panel + 1))
                    .toArray();
        }
    }

    private static boolean feeds(List<Point> points, int above, int node) {
        int at = node;
        while (at >= 0 && at != above) {
            at = points.get(at).parent();
        }
        return at == above;
    }

    private void passOn(
            List<Point> points,
            Distribution distribution,
            int panel,
            int mask,
            Map<Double, Integer> known,
            List<Double> parts) {
        List<Seen> seenBy = new ArrayList<>();
        List<Returned> returnedBy = new ArrayList<>();
        double[] amps = new double[Winding.PHASES];
        List<OnPhase> returning = new ArrayList<>();
        for (int phase = 0; phase < Winding.PHASES; phase++) {
            if ((mask >> phase & 1) != 0) {
                amps[phase] = 1;
                if (mask == 1 << phase) {
                    returning.add(new OnPhase(Phase.values()[phase], 1));
                }
            }
        }
        Point at = points.get(origin[panel]);
        while (at.transformer().isPresent()) {
            TransformerDraw draw = at.transformer().get();
            double[] drawn = draw.envelope(amps);
            List<OnPhase> passed = new ArrayList<>();
            if (draw.passesNeutralOn()) {
                returning.forEach(each -> passed.add(new OnPhase(each.phase(), draw.ratio() * each.part())));
            }
            if (draw.returnsByNeutral()) {
                Phase phase = draw.primaryPhases().get(0);
                passed.add(new OnPhase(phase, drawn[phase.ordinal()]));
            }
            int[] shareOf = new int[Winding.PHASES];
            for (int phase = 0; phase < Winding.PHASES; phase++) {
                shareOf[phase] = drawn[phase] > 0
                        ? known.computeIfAbsent(drawn[phase], part -> {
                            parts.add(part);
                            return parts.size() - 1;
                        })
                        : NO_SHARE;
            }
            for (int node : distribution.onward(at.parent())) {
                seenBy.add(new Seen(node, shareOf));
                passed.forEach(
                        each -> returnedBy.add(new Returned(node, each.phase().ordinal(), each.part())));
            }
            amps = drawn;
            returning = passed;
            at = points.get(points.get(at.parent()).origin());
        }
        seen[panel][mask] = seenBy.toArray(Seen[]::new);
        returned[panel][mask] = returnedBy.toArray(Returned[]::new);
    }

    /** Phases that a place's transformers pass on to nodes above them. */
    Seen[] seen(Place place) {
        return seen[place.panel()][place.phaseMask()];
    }

    /** Shares that nodes at a place's own voltage see of what sits there. */
    int[] whole(Place place) {
        return WHOLE[place.phaseMask()];
    }

    /** Shares that a node sees of what sits there; null where it sees nothing. */
    int[] sharesAt(Place place, int node) {
        for (int carrier : carriers[place.panel()]) {
            if (carrier == node) {
                return whole(place);
            }
        }
        for (Seen each : seen(place)) {
            if (each.node() == node) {
                return each.shares();
            }
        }
        return null;
    }

    /** What nodes above a place's transformers see return by their neutrals. */
    Returned[] returned(Place place) {
        return returned[place.panel()][place.phaseMask()];
    }

    /** Positions of the parts that a load of so many poles may be seen in, sitting in a panel. */
    IntStream sharesOf(int panel, int poles) {
        return IntStream.range(1, MASKS)
                .filter(mask -> Integer.bitCount(mask) == poles)
                .boxed()
                .flatMap(mask -> Arrays.stream(seen[panel][mask]))
                .flatMapToInt(each -> Arrays.stream(each.shares()))
                .filter(share -> share != NO_SHARE);
    }

    /** How much of a load in a panel any one phase of any node carries at most: 1 unless transformers step up. */
    double mostOf(int panel) {
        return Math.max(
                1,
                Arrays.stream(seen[panel])
                        .skip(1)
                        .flatMap(Arrays::stream)
                        .flatMapToInt(each -> Arrays.stream(each.shares()))
                        .filter(share -> share != NO_SHARE)
                        .mapToDouble(share -> shares[share])
                        .max()
                        .orElse(1));
    }

    /** Nodes other than the panel itself that carry what sits in it, as it is or through transformers. */
    public int[] above(int panel) {
        IntStream direct = Arrays.stream(carriers[panel]).filter(node -> node != panel + 1);
        return IntStream.concat(direct, Arrays.stream(seen[panel][1]).mapToInt(Seen::node))
                .toArray();
    }

    /**
     * How much running current all phases of a node carry together for that of one pole in a panel, where phases are even: a
     * delta draws by its ratio of voltages, a single winding on all its phases.
     */
    public double ratio(int panel, int node) {
        double ratio = 1;
        int at = origin[panel];
        if (Arrays.stream(carriers[panel]).anyMatch(carrier -> carrier == node)) {
            return ratio;
        }
        while (at != CompiledProject.NONE && windings[at] != null) {
            ratio *= windings[at].evenRatio();
            if (Arrays.stream(drawnAt[at]).anyMatch(carrier -> carrier == node)) {
                return ratio;
            }
            at = transformerAbove[at];
        }
        return 0;
    }

    /** How much of a one-pole load in a panel returns by the neutral of a node. */
    public double returning(int panel, int node) {
        if (Arrays.stream(carriers[panel]).anyMatch(each -> each == node)) {
            return 1;
        }
        return Arrays.stream(returned[panel][1])
                .filter(each -> each.node() == node)
                .mapToDouble(Returned::part)
                .sum();
    }

    /** How many nodes see what sits in a panel. */
    int depth(int panel) {
        return carriers[panel].length + seen[panel][1].length;
    }

    /** Line-to-neutral voltage of a panel. */
    double volts(int panel) {
        return volts[panel + 1];
    }

    /** How much of the envelope of what sits on some phases of a panel a phase of a node sees. */
    public double part(int panel, int phaseMask, int node, int phase) {
        for (int carrier : carriers[panel]) {
            if (carrier == node) {
                return phaseMask >> phase & 1;
            }
        }
        for (Seen each : seen[panel][phaseMask]) {
            if (each.node() == node) {
                return each.shares()[phase] == NO_SHARE ? 0 : shares[each.shares()[phase]];
            }
        }
        return 0;
    }

    /** Whether what sits there is on a phase of a node: as it is, or behind transformers. */
    public boolean touches(Place place, int node, int phase) {
        for (int carrier : carriers[place.panel()]) {
            if (carrier == node) {
                return (place.phaseMask() >> phase & 1) != 0;
            }
        }
        for (Seen each : seen(place)) {
            if (each.node() == node) {
                return each.shares()[phase] != NO_SHARE;
            }
        }
        return false;
    }
}
