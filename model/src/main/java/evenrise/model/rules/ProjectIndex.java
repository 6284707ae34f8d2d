package evenrise.model.rules;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Finds the parts of a project by their ids; every map keeps the project's order. */
public final class ProjectIndex {
    private final Project project;
    private final Map<String, Load> loads;
    private final Map<String, Panel> panels;
    private final Map<String, Board> boards;
    private final Map<String, BoardType> types;
    private final Map<String, ShutdownGroup> groups;
    private final Map<String, SlotLayout> slots = new LinkedHashMap<>();
    private final Distribution distribution;

    /** Time and space: the project's size. */
    public ProjectIndex(Project project) {
        this.project = project;
        this.loads = byId(project.loads(), Load::id);
        loads.replaceAll((id, load) -> withItsLead(load));
        this.distribution = Distribution.of(project);
        this.panels = byId(project.panels(), Panel::id);
        this.boards = byId(project.boards(), Board::id);
        this.types = byId(project.boardTypes(), BoardType::id);
        this.groups = byId(project.shutdownGroups(), ShutdownGroup::id);
        panels.forEach((id, panel) ->
                slots.put(id, new SlotLayout(panel, distribution.of(panel).system())));
    }

    /** A load behind another's contactor belongs to that one's group and system. */
    private Load withItsLead(Load load) {
        return load.comesWith()
                .map(loads::get)
                .map(lead -> load.with()
                        .shutdownGroup(lead.shutdownGroup())
                        .system(lead.system())
                        .build())
                .orElse(load);
    }

    /** What feeds what. */
    public Distribution distribution() {
        return distribution;
    }

    public Project project() {
        return project;
    }

    /** A load, with the group and system of the one that it comes with. */
    public Optional<Load> load(String id) {
        return Optional.ofNullable(loads.get(id));
    }

    public Optional<Panel> panel(String id) {
        return Optional.ofNullable(panels.get(id));
    }

    /** The supply, a panel or a distribution point, as messages call it. */
    public String placeName(String node) {
        if (node.equals(NodeFigures.SUPPLY)) {
            return "the supply";
        }
        return (panel(node).isPresent() ? "panel " : "distribution point ") + node;
    }

    public Optional<Board> board(String id) {
        return Optional.ofNullable(boards.get(id));
    }

    /** Type of a board of this project. */
    public BoardType typeOf(Board board) {
        return types.get(board.type());
    }

    /** Geometry of a panel of this project. */
    public SlotLayout slotsOf(Panel panel) {
        return slots.get(panel.id());
    }

    public Optional<ShutdownGroup> group(String id) {
        return Optional.ofNullable(groups.get(id));
    }

    /** Whether shutdown groups sit on a board whole and without interruption. */
    public boolean seatsGroupsWhole(Board board) {
        return typeOf(board).groups() == GroupSeating.ONE_BOARD;
    }

    /** Outputs of the largest board of those that seat groups whole; 0 where there is none. */
    public int largestBoardOutputs() {
        return boards.values().stream()
                .filter(this::seatsGroupsWhole)
                .mapToInt(board -> typeOf(board).outputs())
                .max()
                .orElse(0);
    }

    /** Whether the load drops on an emergency; one without a group holds. */
    public boolean drops(Load load) {
        return load.shutdownGroup()
                .flatMap(this::group)
                .filter(group -> group.onEmergency() == OnEmergency.DROP)
                .isPresent();
    }

    private static <T> Map<String, T> byId(List<T> parts, Function<T, String> id) {
        Map<String, T> found = new LinkedHashMap<>();
        parts.forEach(part -> found.put(id.apply(part), part));
        return found;
    }
}
