package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** A project with its parts by id; of parts with the same id, the first. */
final class ProjectParts {
    /** Name of the supply where a node or panel says what feeds it. */
    static final String SUPPLY = "supply";

    final Project project;
    final Map<String, Panel> panels;
    final Map<String, BoardType> types;
    final Map<String, Board> boards;
    final Map<String, ShutdownGroup> groups;
    final Map<String, Load> loads;
    final Map<String, DistributionNode> nodes;
    final Map<String, SwitchedSystem> systems;
    /** Position of each load in the project. */
    final Map<String, Integer> loadIndex = new HashMap<>();

    private final Set<String> unread;

    ProjectParts(Project project, Set<String> unread) {
        this.project = project;
        this.unread = unread;
        panels = byId(project.panels(), Panel::id);
        types = byId(project.boardTypes(), BoardType::id);
        boards = byId(project.boards(), Board::id);
        groups = byId(project.shutdownGroups(), ShutdownGroup::id);
        loads = byId(project.loads(), Load::id);
        nodes = byId(project.nodes(), DistributionNode::id);
        systems = byId(project.systems(), SwitchedSystem::id);
        for (int i = 0; i < project.loads().size(); i++) {
            loadIndex.putIfAbsent(project.loads().get(i).id(), i);
        }
    }

    /** Whether what stands at the pointer, and all it is part of, could be read. */
    boolean knows(String pointer) {
        for (String at = pointer; !unread.isEmpty() && !at.isEmpty(); at = at.substring(0, at.lastIndexOf('/'))) {
            if (unread.contains(at)) {
                return false;
            }
        }
        return true;
    }

    int phases() {
        return project.supply().system().phases().size();
    }

    /** What the lines that feed a point are: system and voltage to neutral; empty where that is not sure. */
    Optional<Lines> linesOf(Optional<String> fedFrom) {
        Set<String> seen = new HashSet<>();
        Optional<String> up = fedFrom;
        while (up.isPresent() && !up.get().equals(SUPPLY)) {
            if (!seen.add(up.get())) {
                return Optional.empty();
            }
            DistributionNode node = nodes.get(up.get());
            Panel panel = panels.get(up.get());
            if (node != null && (node.transformer().isPresent() || node.source().isPresent())) {
                return node.transformer()
                        .map(it -> new Lines(
                                it.secondary().system(), it.secondary().lineToNeutralVolts()))
                        .or(() -> node.source().map(it -> new Lines(it.system(), it.lineToNeutralVolts())));
            }
            if (node == null && panel == null) {
                return Optional.empty();
            }
            up = node != null ? node.fedFrom() : panel.fedFrom();
        }
        return knows("/supply/system") && knows("/supply/line_to_neutral_v")
                ? Optional.of(
                        new Lines(project.supply().system(), project.supply().lineToNeutralVolts()))
                : Optional.empty();
    }

    /** System and voltage to neutral of some lines. */
    record Lines(PhaseSystem system, double lineToNeutralVolts) {}

    /** The load that another one comes with, where there is one. */
    Optional<Load> leadOf(Load load) {
        return load.comesWith().map(loads::get);
    }

    /**
     * Points that carry the current of a panel as it is: itself and what feeds it, up to the next transformer's secondary,
     * a source or the supply. Of a project without errors.
     */
    List<String> carriersOf(Panel panel) {
        List<String> carriers = new ArrayList<>(List.of(panel.id()));
        Optional<String> up = panel.fedFrom();
        while (up.isPresent() && !up.get().equals(SUPPLY)) {
            carriers.add(up.get());
            DistributionNode node = nodes.get(up.get());
            if (node != null && (node.transformer().isPresent() || node.source().isPresent())) {
                return carriers;
            }
            up = node != null ? node.fedFrom() : panels.get(up.get()).fedFrom();
        }
        carriers.add(SUPPLY);
        return carriers;
    }

    /** System that a panel lives at; the supply's where that is not sure. */
    PhaseSystem systemOf(Panel panel) {
        return linesOf(panel.fedFrom())
                .map(Lines::system)
                .orElse(project.supply().system());
    }

    /** Whether it has an output of its own: switched, and not behind the contactor of another. */
    static boolean needsOutput(Load load) {
        return load.switched() && load.comesWith().isEmpty();
    }

    /** Whether its breaker is one that can be switched. */
    static boolean needsSwitchedBreaker(Load load) {
        return needsOutput(load) && load.switchedBy() == SwitchedBy.BREAKER;
    }

    /** System that switches it, by itself or by what it comes with. */
    Optional<String> systemOf(Load load) {
        return leadOf(load).orElse(load).system();
    }

    /** Outputs of a board that loads may have at most: some are to stay free. */
    int usableOutputs(Board board) {
        BoardType type = types.get(board.type());
        return type == null ? 0 : Math.max(0, type.outputs() - type.spareOutputs());
    }

    /** The least time at which an output of a kind can come on, from its board's start, after so many others. */
    static double earliestSeconds(BoardType type, int outputsBefore) {
        return type.isTimedByOutput()
                ? Collections.min(type.timesSeconds().orElseThrow().all())
                : Collections.min(type.startDelaySeconds()) + outputsBefore * Collections.min(type.stepSeconds());
    }

    /** Outputs of a board; 0 where its type is unknown. */
    int outputs(Board board) {
        BoardType type = types.get(board.type());
        return type == null ? 0 : type.outputs();
    }

    String pointer(Load load) {
        return "/loads/" + loadIndex.get(load.id());
    }

    String pointer(Board board) {
        return "/boards/" + project.boards().indexOf(board);
    }

    private static <T> Map<String, T> byId(List<T> all, Function<T, String> id) {
        Map<String, T> map = new java.util.LinkedHashMap<>();
        all.forEach(it -> map.putIfAbsent(id.apply(it), it));
        return map;
    }
}
