package evenrise.solver.exhaustive;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Tolerances;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A project with one panel on all phases of its supply, as the trees see it: loads, boards and groups by index. */
final class SmallProject {
    private static final long FOREVER = Long.MAX_VALUE / 4;

    /** What sums of amperes may lose by rounding, far less than what comparisons of currents forgive. */
    private static final double ROUNDING_AMPS = 1e-9;

    final Project project;
    final int phases;
    final List<SmallLoad> loads;
    final List<Board> boards;
    final double toleranceMicros;

    /** No plan takes longer; a time that none reaches where nothing is stated. */
    final long mostMicros;

    /** No phase of supply and panel may bear more at any instant, in amperes; infinite where nothing is stated. */
    final double mostPeakAmps;

    /** No phase of supply and panel may run at more, in amperes. */
    final double mostRunningAmps;

    /** Weight of a deviation of running currents, of the supply and of the panel, which is the same. */
    final double deviationWeight;

    /** Whether no load can come on a little before one of an earlier role and still be forgiven. */
    final boolean tellsRolesApart;

    /** No plan costs more, in ampere-equivalents: all inrush at once on one phase, in the longest time. */
    final double dearestAmps;

    private final Map<String, BoardType> types = new HashMap<>();

    /** By load, board and output. */
    private final boolean[][][] usable;

    SmallProject(Project project) {
        this.project = project;
        phases = project.supply().system().phases().size();
        boards = project.boards();
        toleranceMicros = project.timingToleranceSeconds() * Micros.PER_SECOND;
        mostMicros = project.maxDurationSeconds().isPresent()
                ? Micros.atMost(project.maxDurationSeconds().getAsDouble()) + Micros.FORGIVEN
                : FOREVER;
        List<NodeLimits> nodes = NodeLimits.of(project);
        mostPeakAmps = nodes.stream()
                        .mapToDouble(node -> node.inrushLimitAmps().orElse(Double.POSITIVE_INFINITY))
                        .min()
                        .orElseThrow()
                + Tolerances.AMPS
                + ROUNDING_AMPS;
        mostRunningAmps =
                nodes.stream().mapToDouble(NodeLimits::continuousAmps).min().orElseThrow()
                        + Tolerances.AMPS
                        + ROUNDING_AMPS;
        ObjectiveWeights weights = project.objective();
        deviationWeight = weights.supplyImbalance() + weights.panelImbalance();
        tellsRolesApart = ProvenBounds.tellsRolesApart(project);
        project.boardTypes().forEach(type -> types.put(type.id(), type));
        dearestAmps = weights.peakInrush()
                        * project.loads().stream()
                                .mapToDouble(load -> load.baseAmps() + load.excessAmps())
                                .sum()
                + deviationWeight
                        * project.loads().stream()
                                .mapToDouble(load -> load.poles() * load.runningAmps())
                                .sum()
                + weights.duration() * longestSeconds()
                + weights.boards() * boards.size();
        loads = loads();
        usable = new boolean[loads.size()][boards.size()][mostOutputs() + 1];
        for (SmallLoad load : loads) {
            for (int board = 0; board < boards.size(); board++) {
                for (int output = 1; output <= type(board).outputs(); output++) {
                    boolean isUsable = load.switched() && mayUse(load.load(), boards.get(board), output);
                    usable[load.index()][board][output] = isUsable;
                    usable[load.index()][board][Instant.ANY_OUTPUT] |= isUsable;
                }
            }
        }
    }

    BoardType type(int board) {
        return types.get(boards.get(board).type());
    }

    /** The board that it follows; -1 where it begins with the command. */
    int prior(int board) {
        return boards.get(board).after().map(this::board).orElse(-1);
    }

    /** Whether another board begins with its last output in use. */
    boolean isFollowed(int board) {
        return boards.stream()
                .anyMatch(other ->
                        other.after().equals(Optional.of(boards.get(board).id())));
    }

    int board(String id) {
        return boards.stream().map(Board::id).toList().indexOf(id);
    }

    int mostOutputs() {
        return boards.stream()
                .mapToInt(board -> types.get(board.type()).outputs())
                .max()
                .orElse(0);
    }

    /** Whether the load by itself may be on the output, counted from 1: reach, allowed panels and what is fixed. */
    boolean mayUse(SmallLoad load, int board, int output) {
        return usable[load.index()][board][output];
    }

    private boolean mayUse(Load load, Board on, int output) {
        return load.fixed().board().orElse(on.id()).equals(on.id())
                && load.fixed().output().orElse(output) == output
                && on.reaches().stream().anyMatch(load::maySitIn);
    }

    /** From when one load comes on until another may; -1 where nothing is asked. */
    long waitMicros(SmallLoad earlier, SmallLoad later) {
        Load one = earlier.load();
        Load other = later.load();
        long wait = other.comesAfter().contains(one.id()) ? earlier.settleMicros() : -1;
        return switch (one.role()) {
            case PROCESSING ->
                switch (other.role()) {
                    case PROCESSING -> wait;
                    case AUXILIARY -> Math.max(wait, 0);
                    case AMPLIFIER -> Math.max(wait, earlier.settleMicros());
                };
            case AUXILIARY ->
                switch (other.role()) {
                    case PROCESSING, AUXILIARY -> wait;
                    case AMPLIFIER -> Math.max(wait, 0);
                };
            case AMPLIFIER -> wait;
        };
    }

    /** All boards after one another, each as slow as it can be. */
    private double longestSeconds() {
        return boards.stream()
                .map(board -> types.get(board.type()))
                .mapToDouble(type -> Collections.max(type.startDelaySeconds())
                        + (type.outputs() - 1) * Collections.max(type.stepSeconds()))
                .sum();
    }

    private List<SmallLoad> loads() {
        PhaseSets sets = new PhaseSets(project);
        Map<String, Integer> groups = new HashMap<>();
        project.shutdownGroups().forEach(group -> groups.put(group.id(), groups.size()));
        Set<String> dropping = project.shutdownGroups().stream()
                .filter(group -> group.onEmergency() == OnEmergency.DROP)
                .map(ShutdownGroup::id)
                .collect(Collectors.toSet());
        Map<Object, Integer> first = new HashMap<>();
        Map<Object, Integer> firstInTime = new HashMap<>();
        List<SmallLoad> all = new ArrayList<>();
        for (Load load : project.loads()) {
            Optional<String> group = load.shutdownGroup();
            int index = all.size();
            all.add(new SmallLoad(
                    index,
                    load,
                    load.baseAmps(),
                    load.excessAmps(),
                    sets.of(load),
                    Micros.atMost(load.settleSeconds()),
                    group.map(groups::get).orElse(-1),
                    group.map(dropping::contains).orElse(false),
                    first.computeIfAbsent(Alike.key(project, load), any -> index),
                    firstInTime.computeIfAbsent(Alike.keyInTime(project, load), any -> index)));
        }
        return List.copyOf(all);
    }
}
