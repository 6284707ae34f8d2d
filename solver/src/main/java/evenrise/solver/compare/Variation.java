package evenrise.solver.compare;

import evenrise.model.project.Board;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * What of a project is varied and how. The tree stays: panels hang where the project has panels, at each such place one or
 * more of any type of the catalogue; each system has boards of its own of any type. Nothing else changes.
 */
public final class Variation {
    private final Project project;
    private final Catalogue catalogue;
    private final Stays stays;
    private final List<FeedPoint> points;
    private final List<Optional<String>> systems;
    private final BooleanSupplier isStopped;
    private final Map<Optional<String>, PackingMemory> packings = new HashMap<>();

    /** @param project without errors, with a catalogue */
    public Variation(Project project) {
        this(project, () -> false);
    }

    /** @param isStopped asked while make-ups are listed, which may take long; what is not listed then is told */
    public Variation(Project project, BooleanSupplier isStopped) {
        this.project = project;
        this.isStopped = isStopped;
        this.catalogue = project.catalogue().orElseThrow();
        this.stays = new Stays(project);
        this.points = points(project, stays);
        this.systems = project.systems().isEmpty()
                ? List.of(Optional.empty())
                : project.systems().stream()
                        .map(SwitchedSystem::id)
                        .map(Optional::of)
                        .toList();
    }

    private static List<FeedPoint> points(Project project, Stays stays) {
        Distribution distribution = Distribution.of(project);
        Map<String, FeedPoint> points = new LinkedHashMap<>();
        for (Panel panel : project.panels()) {
            if (!stays.has(panel)) {
                Point at = distribution.of(panel);
                String name = FeedPoint.nameOf(panel);
                points.putIfAbsent(name, new FeedPoint(name, panel, at.system(), at.lineToNeutralVolts()));
            }
        }
        return List.copyOf(points.values());
    }

    boolean isStopped() {
        return isStopped.getAsBoolean();
    }

    /** What is known of the packings of a system's groups, shared by all lists of make-ups. */
    PackingMemory packings(Optional<String> system) {
        return packings.computeIfAbsent(system, any -> new PackingMemory());
    }

    Project project() {
        return project;
    }

    Catalogue catalogue() {
        return catalogue;
    }

    List<FeedPoint> points() {
        return points;
    }

    /** One without a name where the project has none. */
    List<Optional<String>> systems() {
        return systems;
    }

    List<Panel> panelsThatStay() {
        return project.panels().stream().filter(stays::has).toList();
    }

    List<Board> boardsThatStay() {
        return project.boards().stream().filter(stays::has).toList();
    }

    /** Panels and boards that stay, and why; empty where all are exchanged. */
    public List<String> whatStays() {
        return stays.sentences();
    }

    /** Places where a load may sit: those of panels that are exchanged, and panels that stay. */
    Set<String> placesOf(Load load) {
        Set<String> places = new LinkedHashSet<>();
        for (Panel panel : project.panels()) {
            if (load.panels().isEmpty() || load.panels().contains(panel.id())) {
                places.add(placeOf(panel));
            }
        }
        return places;
    }

    /** The place that a panel of the project stands for, or the panel itself where it stays. */
    String placeOf(Panel panel) {
        return stays.has(panel) ? panelPlace(panel) : FeedPoint.nameOf(panel);
    }

    /** Names of panels and of what feeds them may be the same, where a panel feeds panels. */
    static String panelPlace(Panel panel) {
        return "panel " + panel.id();
    }

    /** The project with panels and boards of a make-up; boards reach all that catalogue and project let them reach. */
    Project built(MakeUp makeUp) {
        return BuiltProject.of(this, makeUp, catalogue.boardsReachAll());
    }

    /**
     * The same, where boards reach every panel whatever the catalogue says: what it cannot do, none with less reach can.
     */
    Project builtWithAllReach(MakeUp makeUp) {
        return BuiltProject.of(this, makeUp, true);
    }

    Panel panelOf(String id) {
        return project.panels().stream()
                .filter(panel -> panel.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    Set<String> placesOf(Board board) {
        Set<String> places = new LinkedHashSet<>();
        board.reaches().forEach(id -> places.add(placeOf(panelOf(id))));
        return places;
    }

    /** Where boards of a system hang: as in the project; anywhere, where it has none. */
    Set<String> homes(Optional<String> system) {
        Set<String> homes = new LinkedHashSet<>();
        boardsOf(system).forEach(board -> homes.add(placeOf(panelOf(board.panel()))));
        return homes.isEmpty() ? everywhere() : homes;
    }

    /** Which panels boards of a system reach together: as in the project; all, where it has none. */
    Set<String> reached(Optional<String> system) {
        Set<String> reached = new LinkedHashSet<>();
        boardsOf(system).forEach(board -> reached.addAll(placesOf(board)));
        return reached.isEmpty() || project.systems().isEmpty() ? everywhere() : reached;
    }

    private List<Board> boardsOf(Optional<String> system) {
        return project.boards().stream()
                .filter(board -> board.system().isEmpty()
                        || system.isEmpty()
                        || board.system().equals(system))
                .toList();
    }

    private Set<String> everywhere() {
        Set<String> all = new LinkedHashSet<>();
        project.panels().forEach(panel -> all.add(placeOf(panel)));
        return all;
    }
}
