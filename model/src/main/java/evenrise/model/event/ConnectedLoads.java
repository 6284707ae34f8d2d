package evenrise.model.event;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.project.RideThrough;
import evenrise.model.project.Role;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Clocks;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Needs;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Upstream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What a rehearsal needs of a plan, by index instead of by name: the loads that are connected at all (unswitched, or with
 * an output), each with its place, time, needs and board. It does not change while a rehearsal runs, so that many may
 * share it.
 */
public final class ConnectedLoads {
    static final int NONE = -1;
    private static final int MOST_NAMED = 5;
    final Layout layout;
    final Behaviour behaviour;
    final double toleranceSeconds;
    final List<Placement> loads = new ArrayList<>();
    final boolean[] switched;
    final double[] on;
    final boolean[] drops;
    final boolean[] isAmplifier;
    final boolean[] isProcessing;
    final int[] group;
    final int[] board;
    /** Processing that each load needs; one array for all that need the same. */
    final int[][] needs;
    /** Loads that each load comes after. */
    final int[][] after;

    /** The panel that each load sits in, as a point of the distribution; the supply's where there is no such panel. */
    final int[] node;

    final int[][] phases;
    /** Of each load, then of each transformer's own inrush. */
    final InrushEnvelope[] exact;

    final Upstream upstream;
    final List<Winding> windings = new ArrayList<>();
    /** Voltage below which a load loses its charge, and how long it keeps it nevertheless. */
    final double[] neededPercent;

    final double[] keepsChargeMillis;
    final InrushEnvelope[] bounding;
    /** What each load draws that was on and at rest before the latest happening. */
    final double[] useAmps;

    final List<String> groups;
    final List<Board> boards;
    final int[] boardAfter;
    final double[] boardBegin;
    final List<NodeLimits> nodes;
    /** What each board watches; boards that watch the same share one. */
    final List<Watch> watches = new ArrayList<>();

    final int[] watchOf;

    /** Commands: one, or one for each system that has a clock of its own, each after those that it needs. */
    final int clocks;

    final boolean hasClocks;

    final int[] clock;
    /** The system of each load; 0 where the project has none. */
    final int[] system;

    final List<String> systems;
    /** Clocks that each needs on, directly or not. */
    final int[][] needsClocks;
    /** How much later than the mirror image each load goes off. */
    final double[] offAfter;
    /** The load whose output switches each, itself in most cases; none where nothing does. */
    final int[] actuator;
    /** Whether each is behind a contactor, and the voltages that it falls below and closes from. */
    final double[] closesFromPercent;

    /** The end of what a board watches: a point, or a load's breaker there. */
    record Watch(int point, int load) {}

    /**
     * What a transformer draws when it is energised.
     *
     * @param point its secondary
     * @param envelope empty where it states no inrush
     */
    record Winding(int point, String id, int[] primaryPhases, Optional<InrushEnvelope> envelope) {}

    private final Map<String, Integer> pointIndex = new HashMap<>();
    private final Map<String, Integer> systemIndex = new HashMap<>();
    private final Map<String, Integer> loadIndex = new HashMap<>();
    private final Map<String, Integer> groupIndex = new HashMap<>();
    private final Map<String, Integer> boardIndex = new HashMap<>();

    final Use use;
    final boolean[] isMotor;
    /** Whether motors come back without that anybody asks, once the mains have returned or an emergency is released. */
    final boolean motorsReturn;

    private ConnectedLoads(Layout layout, Use use, boolean motorsReturn) {
        this.layout = layout;
        this.use = use;
        this.motorsReturn = motorsReturn;
        behaviour = layout.project().behaviourOrDefault();
        toleranceSeconds = layout.project().timingToleranceSeconds();
        upstream = Upstream.of(layout.distribution());
        nodes = NodeLimits.of(layout.project());
        groups = layout.project().shutdownGroups().stream()
                .map(each -> each.id())
                .toList();
        groups.forEach(id -> groupIndex.put(id, groupIndex.size()));
        boards = layout.project().boards();
        boards.forEach(each -> boardIndex.put(each.id(), boardIndex.size()));
        boardAfter = boards.stream()
                .mapToInt(each -> each.after().map(boardIndex::get).orElse(NONE))
                .toArray();
        boardBegin = boards.stream()
                .mapToDouble(each -> layout.times().beginSeconds(each.id()))
                .toArray();
        for (Placement each : layout.placements()) {
            if (each.isSequenced() || !each.load().switched()) {
                loadIndex.put(each.id(), loads.size());
                loads.add(each);
            }
        }
        layout.distribution().points().forEach(each -> pointIndex.put(each.id(), each.index()));
        systems = ordered(layout.project().systems());
        systems.forEach(id -> systemIndex.put(id, systemIndex.size()));
        hasClocks = layout.project().hasClocks();
        clocks = hasClocks ? systems.size() : 1;
        needsClocks = new int[clocks][];
        for (int c = 0; c < clocks; c++) {
            needsClocks[c] = hasClocks ? needed(c) : new int[0];
        }
        windings();
        int count = loads.size();
        clock = new int[count];
        system = new int[count];
        offAfter = new double[count];
        actuator = new int[count];
        closesFromPercent = new double[count];
        switched = new boolean[count];
        on = new double[count];
        drops = new boolean[count];
        isAmplifier = new boolean[count];
        isProcessing = new boolean[count];
        group = new int[count];
        board = new int[count];
        after = new int[count][];
        needs = new int[count][];
        node = new int[count];
        phases = new int[count][];
        exact = new InrushEnvelope[count + windings.size()];
        neededPercent = new double[count];
        keepsChargeMillis = new double[count];
        bounding = new InrushEnvelope[count];
        useAmps = new double[count];
        isMotor = new boolean[count];
        Needs of = new Needs(layout.project());
        Map<List<Load>, int[]> shared = new IdentityHashMap<>();
        for (int n = 0; n < count; n++) {
            compile(n);
            List<Load> needed = switched[n] ? of.of(loads.get(n).load()) : List.of();
            needs[n] = shared.computeIfAbsent(needed, this::indices);
        }
        for (int k = 0; k < windings.size(); k++) {
            exact[count + k] = windings.get(k).envelope().orElse(new InrushEnvelope(0, 0, 1, 0));
        }
        watchOf = new int[boards.size()];
        for (int b = 0; b < watchOf.length; b++) {
            Watch watch = watch(boards.get(b));
            if (!watches.contains(watch)) {
                watches.add(watch);
            }
            watchOf[b] = watches.indexOf(watch);
        }
        if (watches.isEmpty()) {
            watches.add(new Watch(Distribution.SUPPLY, NONE));
        }
    }

    /** Each after those that it needs; else as the project has them. */
    private static List<String> ordered(List<SwitchedSystem> systems) {
        List<String> order = new ArrayList<>();
        for (int round = 0; round <= systems.size(); round++) {
            for (SwitchedSystem each : systems) {
                if (!order.contains(each.id()) && order.containsAll(each.needs())) {
                    order.add(each.id());
                }
            }
        }
        return order;
    }

    private int[] needed(int c) {
        return Clocks.needed(systems.get(c), layout.project().systems()).stream()
                .filter(id -> !id.equals(systems.get(c)))
                .mapToInt(systemIndex::get)
                .sorted()
                .toArray();
    }

    private void windings() {
        for (Distribution.Point each : layout.distribution().points()) {
            if (each.transformer().isPresent()) {
                Transformer it = each.node().orElseThrow().transformer().orElseThrow();
                windings.add(new Winding(
                        each.index(),
                        each.id(),
                        each.transformer().get().primaryPhases().stream()
                                .mapToInt(Phase::ordinal)
                                .toArray(),
                        it.inrushPeakAmps().isPresent()
                                ? Optional.of(new InrushEnvelope(
                                        0,
                                        it.inrushPeakAmps().getAsDouble(),
                                        it.inrushHalfMillis().orElse(Double.POSITIVE_INFINITY) / 1000,
                                        0))
                                : Optional.empty()));
            }
        }
    }

    private Watch watch(Board board) {
        String fedBy = board.fedBy().orElse(board.panel());
        Integer point = fedBy.equals(NodeFigures.SUPPLY) ? Integer.valueOf(Distribution.SUPPLY) : pointIndex.get(fedBy);
        if (point != null) {
            return new Watch(point, NONE);
        }
        Integer load = loadIndex.get(fedBy);
        return load == null || phases[load].length == 0
                ? new Watch(pointIndex.getOrDefault(board.panel(), Distribution.SUPPLY), NONE)
                : new Watch(node[load], load);
    }

    /** What feeds what with some points on their alternates. */
    Distribution fedWith(boolean[] onAlternate) {
        Project project = layout.project();
        return Distribution.of(project.with()
                .panels(project.panels().stream()
                        .map(each -> onAlternate[pointIndex.get(each.id())]
                                ? each.withFedFrom(each.alternateFedFrom())
                                : each)
                        .toList())
                .nodes(project.nodes().stream()
                        .map(each -> onAlternate[pointIndex.get(each.id())]
                                ? each.withFedFrom(each.alternateFedFrom())
                                : each)
                        .toList())
                .build());
    }

    /** The plan behind {@code layout}, which may be broken in any way; the show runs. */
    public static ConnectedLoads of(Layout layout) {
        return of(layout, Use.FULL);
    }

    /** The same with the show running or not. */
    public static ConnectedLoads of(Layout layout, Use use) {
        return of(
                layout,
                use,
                layout.project()
                        .behaviourOrDefault()
                        .motorsResume()
                        .filter(Resume.SEQUENCE::equals)
                        .isPresent());
    }

    /** The same with motors that come back by themselves, or not, whatever the project says of them. */
    static ConnectedLoads of(Layout layout, Use use, boolean motorsReturn) {
        return new ConnectedLoads(layout, use, motorsReturn);
    }

    /** Those of them that come on at all. */
    private int[] indices(List<Load> some) {
        return some.stream()
                .map(each -> loadIndex.get(each.id()))
                .filter(it -> it != null && loads.get(it).isSequenced())
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private void compile(int n) {
        Placement placement = loads.get(n);
        Load load = placement.load();
        switched[n] = placement.isSequenced();
        on[n] = placement.onSeconds().orElse(0);
        drops[n] = switched[n] && layout.index().drops(load);
        isMotor[n] = load.isMotor();
        isAmplifier[n] = switched[n] && load.role() == Role.AMPLIFIER;
        isProcessing[n] = switched[n] && load.role() == Role.PROCESSING;
        group[n] = load.shutdownGroup()
                .filter(any -> switched[n])
                .map(groupIndex::get)
                .orElse(NONE);
        Optional<Placement> lead = load.comesWith().flatMap(layout::placement);
        board[n] = lead.orElse(placement)
                .board()
                .map(it -> boardIndex.get(it.id()))
                .orElse(NONE);
        actuator[n] = lead.map(it -> loadIndex.get(it.id())).orElse(n);
        boolean isByContactor = switched[n] && (lead.isPresent() || load.switchedBy() == SwitchedBy.CONTACTOR);
        closesFromPercent[n] = isByContactor ? behaviour.contactorClosesFromPercent() : 0;
        system[n] = load.system().map(systemIndex::get).orElse(0);
        clock[n] = hasClocks ? system[n] : 0;
        offAfter[n] = switched[n] ? layout.clocks().offAfterSeconds(load) : 0;
        after[n] = switched[n]
                ? load.comesAfter().stream()
                        .map(loadIndex::get)
                        .filter(it -> it != null && loads.get(it).isSequenced())
                        .mapToInt(Integer::intValue)
                        .toArray()
                : new int[0];
        node[n] = placement
                .panel()
                .map(panel -> layout.distribution().of(panel).index())
                .orElse(Distribution.SUPPLY);
        List<Phase> there = layout.distribution().points().get(node[n]).system().phases();
        phases[n] = placement.phases().stream()
                .distinct()
                .mapToInt(there::indexOf)
                .filter(phase -> phase >= 0)
                .toArray();
        exact[n] = InrushEnvelope.of(load, 0);
        neededPercent[n] = load.rideThrough().map(RideThrough::remainingPercent).orElse(behaviour.reinrushPercent());
        if (isByContactor) {
            neededPercent[n] = Math.max(neededPercent[n], behaviour.contactorDropsPercent());
        }
        keepsChargeMillis[n] =
                load.rideThrough().map(RideThrough::withoutMillis).orElse(behaviour.reinrushAfterMillis());
        bounding[n] = InrushEnvelope.of(load, toleranceSeconds);
        useAmps[n] = use == Use.FULL ? FullUse.amps(load) : exact[n].baseAmps();
    }

    int count() {
        return loads.size();
    }

    String id(int load) {
        return loads.get(load).id();
    }

    /** The first few of these loads by name, the rest counted. */
    String named(List<Integer> some) {
        return Phrase.listed(some.stream().map(this::id).toList(), MOST_NAMED);
    }

    /** The supply, a panel or a node, as what a finding is about. */
    Subject place(String node) {
        if (node.equals(NodeFigures.SUPPLY)) {
            return new Subject(SubjectKind.SUPPLY, node);
        }
        boolean isPanel = layout.index().panel(node).isPresent();
        return new Subject(isPanel ? SubjectKind.PANEL : SubjectKind.NODE, node);
    }

    /** The same as what a finding is about, those of the second list after those of the first. */
    List<Subject> subjects(List<Integer> some, List<Integer> others) {
        return Stream.concat(some.stream(), others.stream())
                .map(n -> new Subject(SubjectKind.LOAD, id(n)))
                .toList();
    }

    /** Whether {@code load} needs {@code processing}. */
    boolean needs(int load, int processing) {
        for (int each : needs[load]) {
            if (each == processing) {
                return true;
            }
        }
        return false;
    }

    Optional<Integer> load(String id) {
        return Optional.ofNullable(loadIndex.get(id));
    }

    /** A panel, a node or the supply, by name. */
    Optional<Integer> point(String id) {
        return Optional.ofNullable(pointIndex.get(id));
    }

    Optional<Integer> system(String id) {
        return Optional.ofNullable(systemIndex.get(id));
    }

    /** Systems that an event is about: the one that it names, or all. */
    List<Integer> systemsOf(ScriptEvent event) {
        if (event.system().isPresent()) {
            return List.of(systemIndex.get(event.system().get()));
        }
        if (event.group().isPresent()) {
            return List.of(systemOf(groupIndex.get(event.group().get())));
        }
        return IntStream.range(0, Math.max(1, systems.size())).boxed().toList();
    }

    /** Commands that an event is about. */
    List<Integer> clocksOf(ScriptEvent event) {
        if (!hasClocks) {
            return List.of(0);
        }
        return systemsOf(event);
    }

    /** The system that a shutdown group lies in; 0 where the project has none. */
    int systemOf(int someGroup) {
        for (int n = 0; n < count(); n++) {
            if (group[n] == someGroup) {
                return system[n];
            }
        }
        return 0;
    }

    String pointName(int point) {
        return layout.distribution().points().get(point).id();
    }

    String watchName(int watch) {
        Watch it = watches.get(watch);
        return it.load() == NONE ? pointName(it.point()) : "load " + id(it.load());
    }

    /** What the load's board watches. */
    int watch(int load) {
        return board[load] == NONE ? 0 : watchOf[board[load]];
    }

    /** What boards with loads of a command watch; all that is watched where it has none. */
    int[] watchesOf(int someClock) {
        int[] own = IntStream.range(0, count())
                .filter(n -> board[n] != NONE && clock[n] == someClock)
                .map(this::watch)
                .distinct()
                .toArray();
        return own.length == 0 ? IntStream.range(0, watches.size()).toArray() : own;
    }

    /** Before what is told of a command, where there are several. */
    String clockName(int c) {
        return hasClocks ? systems.get(c) + ": " : "";
    }

    /** Time without voltage while a point is transferred. */
    double transferSeconds(int point) {
        Distribution.Point it = layout.distribution().points().get(point);
        return it.panel()
                .map(Panel::transferSeconds)
                .or(() -> it.node().map(DistributionNode::transferSeconds))
                .orElse(OptionalDouble.empty())
                .orElse(0);
    }

    /** Index of the envelope of a transformer's inrush. */
    int winding(int k) {
        return count() + k;
    }

    Optional<Integer> group(String id) {
        return Optional.ofNullable(groupIndex.get(id));
    }

    Optional<Integer> board(String id) {
        return Optional.ofNullable(boardIndex.get(id));
    }

    /** Whether the group drops on an emergency. */
    boolean groupDrops(int index) {
        for (int n = 0; n < count(); n++) {
            if (group[n] == index) {
                return drops[n];
            }
        }
        return false;
    }
}
