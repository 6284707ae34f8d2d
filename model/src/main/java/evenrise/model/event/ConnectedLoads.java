package evenrise.model.event;

import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Resume;
import evenrise.model.project.RideThrough;
import evenrise.model.project.Role;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Needs;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

    final int[] node;
    final int[][] phases;
    final InrushEnvelope[] exact;
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
    final List<Phase> systemPhases;

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
        systemPhases = layout.project().supply().system().phases();
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
        int count = loads.size();
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
        exact = new InrushEnvelope[count];
        neededPercent = new double[count];
        keepsChargeMillis = new double[count];
        bounding = new InrushEnvelope[count];
        useAmps = new double[count];
        isMotor = new boolean[count];
        Map<String, Integer> nodeIndex = new HashMap<>();
        for (Panel panel : layout.project().panels()) {
            nodeIndex.put(panel.id(), 1 + nodeIndex.size());
        }
        Needs of = new Needs(layout.project());
        Map<List<Load>, int[]> shared = new IdentityHashMap<>();
        for (int n = 0; n < count; n++) {
            compile(n, nodeIndex);
            List<Load> needed = switched[n] ? of.of(loads.get(n).load()) : List.of();
            needs[n] = shared.computeIfAbsent(needed, this::indices);
        }
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

    private void compile(int n, Map<String, Integer> nodeIndex) {
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
        board[n] = placement.board().map(it -> boardIndex.get(it.id())).orElse(NONE);
        after[n] = switched[n]
                ? load.comesAfter().stream()
                        .map(loadIndex::get)
                        .filter(it -> it != null && loads.get(it).isSequenced())
                        .mapToInt(Integer::intValue)
                        .toArray()
                : new int[0];
        node[n] = nodeIndex.getOrDefault(placement.assignment().panel(), 0);
        phases[n] = placement.phases().stream()
                .distinct()
                .mapToInt(systemPhases::indexOf)
                .filter(phase -> phase >= 0)
                .toArray();
        exact[n] = InrushEnvelope.of(load, 0);
        neededPercent[n] = load.rideThrough().map(RideThrough::remainingPercent).orElse(behaviour.reinrushPercent());
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
        String first =
                String.join(", ", some.stream().limit(MOST_NAMED).map(this::id).toList());
        return some.size() <= MOST_NAMED ? first : first + " and " + (some.size() - MOST_NAMED) + " more";
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
