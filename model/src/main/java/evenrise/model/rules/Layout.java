package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.EventPeak;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.Plan;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.sequence.StepTimes;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * A plan held against its project: ids found, slots and phases worked out, outputs given to who asked first, times
 * computed. The project is one without errors; the plan may be broken in any way. What the plan leaves open or gets wrong
 * is empty here, and where it speaks twice the last word counts; the rules say what is wrong about it.
 */
public final class Layout {
    private final ProjectIndex index;
    private final Places places;
    private final Plan plan;
    private final Map<String, Placement> placements = new LinkedHashMap<>();
    private final Map<String, List<Placement>> byPanel = new HashMap<>();
    private final Map<String, TreeMap<Integer, Placement>> outputs = new LinkedHashMap<>();
    private final Map<String, List<String>> behind = new HashMap<>();
    private final Map<String, BoardSetting> settings;
    private final StepTimes times;
    private final Clocks clocks;
    private Nodes computing;
    private List<NodeFigures> nodes;
    private NodeLoads nodeLoads;
    private UseCurrents fullUse;
    private List<UseCurrents> sceneUses;
    private List<Double> worstNeutralAmps;
    private List<List<EventPeak>> eventPeaks;
    private PeakBasis peakBasis;

    private Layout(ProjectIndex index, Plan plan) {
        this.index = index;
        this.places = new Places(index);
        this.plan = plan;
        Map<String, Assignment> lastWords = lastWords();
        Map<String, TreeMap<Integer, String>> seats = seats(lastWords);
        this.settings = settings();
        Map<String, Integer> lastUsed = new HashMap<>();
        seats.forEach((board, taken) -> lastUsed.put(board, taken.lastKey()));
        this.times = new StepTimes(index.project(), settings, lastUsed, asked(seats, lastWords));
        lastWords.forEach((id, assignment) -> placements.put(id, place(assignment, seats)));
        placements.replaceAll((id, placement) -> withItsLead(placement));
        placements
                .values()
                .forEach(each -> each.load()
                        .comesWith()
                        .ifPresent(lead -> behind.computeIfAbsent(lead, any -> new ArrayList<>())
                                .add(each.id())));
        this.clocks = Clocks.of(this);
        placements.values().stream()
                .filter(Placement::fits)
                .forEach(each -> byPanel.computeIfAbsent(each.assignment().panel(), any -> new ArrayList<>())
                        .add(each));
        index.project().boards().forEach(board -> outputs.put(board.id(), new TreeMap<>()));
        seats.forEach((board, taken) ->
                taken.forEach((output, load) -> outputs.get(board).put(output, placements.get(load))));
    }

    /** Holds {@code plan} against {@code project}. Time: linear in both. */
    public static Layout of(Project project, Plan plan) {
        return new Layout(new ProjectIndex(project), plan);
    }

    /** The same with an index that is there already. */
    public static Layout of(ProjectIndex index, Plan plan) {
        return new Layout(index, plan);
    }

    public ProjectIndex index() {
        return index;
    }

    /** Where assignments lie, taken by themselves. */
    Places places() {
        return places;
    }

    public Project project() {
        return index.project();
    }

    public Plan plan() {
        return plan;
    }

    /** Every load of the project that the plan assigns, in the plan's order. */
    public Collection<Placement> placements() {
        return Collections.unmodifiableCollection(placements.values());
    }

    /** The load's placement; empty where the plan assigns it nowhere. */
    public Optional<Placement> placement(String load) {
        return Optional.ofNullable(placements.get(load));
    }

    /** Loads behind the contactor of another, in the plan's order. */
    public List<String> behind(String load) {
        return behind.getOrDefault(load, List.of());
    }

    /** The loads of one panel that fit where they are, in the plan's order. */
    public List<Placement> in(Panel panel) {
        return Collections.unmodifiableList(byPanel.getOrDefault(panel.id(), List.of()));
    }

    /** Used outputs of a board, in their order; of two loads on one output the first in the plan has it. */
    public Map<Integer, Placement> outputs(String board) {
        return Collections.unmodifiableMap(outputs.getOrDefault(board, new TreeMap<>()));
    }

    /** Loads of one role that have an output, in the plan's order. */
    public List<Placement> sequenced(Role role) {
        return placements.values().stream()
                .filter(each -> each.isSequenced() && each.load().role() == role)
                .toList();
    }

    /** Loads of each shutdown group that are switched, in the plan's order. */
    public Map<String, List<Placement>> groups() {
        Map<String, List<Placement>> groups = new LinkedHashMap<>();
        for (Placement each : placements.values()) {
            if (each.isSequenced()) {
                each.load()
                        .shutdownGroup()
                        .ifPresent(group -> groups.computeIfAbsent(group, any -> new ArrayList<>())
                                .add(each));
            }
        }
        return groups;
    }

    /** How the plan sets a board; the first setting that its type offers where the plan says nothing. */
    public BoardSetting setting(Board board) {
        return settings.get(board.id());
    }

    /** When boards begin and outputs come on. */
    public StepTimes times() {
        return times;
    }

    /** How long each system takes, and when what came on goes off. */
    public Clocks clocks() {
        return clocks;
    }

    /** What feeds what; its points are those of {@link #nodes()}. */
    public Distribution distribution() {
        return index.distribution();
    }

    /** Boards that switch at least one load. */
    public int boardsUsed() {
        return (int) outputs.values().stream().filter(used -> !used.isEmpty()).count();
    }

    /**
     * Electrical figures of the supply, then of the panels in the project's order, then of its further nodes; computed when
     * first asked for.
     */
    public synchronized List<NodeFigures> nodes() {
        if (nodes == null) {
            nodes = computing().figures();
        }
        return nodes;
    }

    /** What each load is at each of those nodes; computed when first asked for. */
    public synchronized NodeLoads nodeLoads() {
        if (nodeLoads == null) {
            nodeLoads = new NodeLoads(this);
        }
        return nodeLoads;
    }

    /** What every point carries in each scene, in the project's order; computed when first asked for. */
    public synchronized List<UseCurrents> sceneUses() {
        if (sceneUses == null) {
            sceneUses = SceneCurrents.of(index).scenes().stream()
                    .map(scene ->
                            UseCurrents.of(this, load -> scene.runningAmps().get(load.id())))
                    .toList();
        }
        return sceneUses;
    }

    /** What every point carries with each load at its running current, whatever the scenes; computed when first asked for. */
    public synchronized UseCurrents fullUse() {
        if (fullUse == null) {
            fullUse = UseCurrents.of(this, Load::runningAmps);
        }
        return fullUse;
    }

    /**
     * What the neutral of each of those nodes carries at the worst use of its loads, each on or off by itself; computed when
     * first asked for.
     */
    public synchronized List<Double> worstNeutralAmps() {
        if (worstNeutralAmps == null) {
            worstNeutralAmps = distribution().points().stream()
                    .map(point -> NeutralUse.worstAmps(point, nodeLoads().returning(point.index())))
                    .toList();
        }
        return worstNeutralAmps;
    }

    /** What a node carries as each command is carried out, by its place in {@link #nodes()}; computed each time. */
    public List<NodeStart> starts(int node) {
        return computing().starts(distribution().points().get(node));
    }

    /** What makes the greatest peak of a node, largest first; computed each time. */
    public List<PeakShare> peakShares(int node) {
        return computing().shares(node, worstPeak(node));
    }

    /** The greatest peak of a node; of equals the first in the system's order. */
    public PhasePeak worstPeak(int node) {
        return Referee.worstPeak(nodes().get(node));
    }

    /** What each of those nodes peaks at when something happens; computed when first asked for. */
    public synchronized List<List<EventPeak>> eventPeaks() {
        if (eventPeaks == null) {
            eventPeaks = new EventPeaks(this).ofAllNodes();
        }
        return eventPeaks;
    }

    /** The same peaks over the supply's voltages, and what they rest on; computed when first asked for. */
    public synchronized PeakBasis peakBasis() {
        if (peakBasis == null) {
            peakBasis = PeakBases.of(this);
        }
        return peakBasis;
    }

    /** The same over other voltages; computed each time. */
    public List<RangePeak> peaksOver(SupplyVoltage voltage) {
        return PeakBases.peaks(this, voltage);
    }

    private synchronized Nodes computing() {
        if (computing == null) {
            computing = new Nodes(this);
        }
        return computing;
    }

    private Map<String, Assignment> lastWords() {
        Map<String, Assignment> words = new LinkedHashMap<>();
        for (Assignment assignment : plan.assignments()) {
            if (index.load(assignment.load()).isPresent()) {
                words.put(assignment.load(), assignment);
            }
        }
        return words;
    }

    private Map<String, TreeMap<Integer, String>> seats(Map<String, Assignment> words) {
        Map<String, TreeMap<Integer, String>> seats = new LinkedHashMap<>();
        words.forEach((id, assignment) -> places.switchingBoard(assignment)
                .ifPresent(board -> seats.computeIfAbsent(board.id(), any -> new TreeMap<>())
                        .putIfAbsent(assignment.output().getAsInt(), id)));
        return seats;
    }

    private Map<String, BoardSetting> settings() {
        Map<String, BoardSetting> words = new LinkedHashMap<>();
        for (Board board : index.project().boards()) {
            BoardType type = index.typeOf(board);
            words.put(
                    board.id(),
                    type.isTimedByOutput()
                            ? BoardSetting.ofEach(board.id())
                            : new BoardSetting(
                                    board.id(),
                                    type.startDelaySeconds().get(0),
                                    type.stepSeconds().get(0)));
        }
        plan.boards().forEach(said -> words.computeIfPresent(said.id(), (id, first) -> said(said, first)));
        return words;
    }

    private static BoardSetting said(BoardSetting said, BoardSetting first) {
        return new BoardSetting(
                said.id(),
                said.startDelaySeconds().isPresent() ? said.startDelaySeconds() : first.startDelaySeconds(),
                said.stepSeconds().isPresent() ? said.stepSeconds() : first.stepSeconds());
    }

    /** On times that the plan states for outputs that have times of their own; 0 where it states none. */
    private Map<String, Map<Integer, Double>> asked(
            Map<String, TreeMap<Integer, String>> seats, Map<String, Assignment> words) {
        Map<String, Map<Integer, Double>> asked = new HashMap<>();
        seats.forEach((board, taken) -> {
            if (index.typeOf(index.board(board).orElseThrow()).isTimedByOutput()) {
                Map<Integer, Double> times = new HashMap<>();
                taken.forEach((output, load) ->
                        times.put(output, words.get(load).onSeconds().orElse(0)));
                asked.put(board, times);
            }
        });
        return asked;
    }

    /** What is behind a contactor comes on with it. */
    private Placement withItsLead(Placement placement) {
        return placement
                .load()
                .comesWith()
                .map(lead -> new Placement(
                        placement.load(),
                        placement.assignment(),
                        placement.panel(),
                        placement.slots(),
                        placement.phases(),
                        Optional.empty(),
                        Optional.ofNullable(placements.get(lead))
                                .map(Placement::onSeconds)
                                .orElse(OptionalDouble.empty())))
                .orElse(placement);
    }

    private Placement place(Assignment assignment, Map<String, TreeMap<Integer, String>> seats) {
        Load load = index.load(assignment.load()).orElseThrow();
        Optional<Board> board = places.switchingBoard(assignment)
                .filter(found -> seats.get(found.id())
                        .get(assignment.output().getAsInt())
                        .equals(load.id()));
        return new Placement(
                load,
                assignment,
                index.panel(assignment.panel()),
                places.slotsAt(assignment, load.poles()),
                places.phasesAt(assignment, load.poles()),
                board,
                board.isPresent() ? onSecondsOf(assignment) : OptionalDouble.empty());
    }

    /**
     * When the output that the assignment names comes on, whoever has it, or that of the load that this one comes with;
     * empty where there is no such output.
     */
    OptionalDouble onSecondsOf(Assignment assignment) {
        Optional<String> lead = index.load(assignment.load()).flatMap(Load::comesWith);
        if (lead.isPresent()) {
            return placement(lead.get()).map(Placement::onSeconds).orElse(OptionalDouble.empty());
        }
        return places.switchingBoard(assignment)
                .map(board -> OptionalDouble.of(
                        times.onSeconds(board.id(), assignment.output().getAsInt())))
                .orElse(OptionalDouble.empty());
    }
}
