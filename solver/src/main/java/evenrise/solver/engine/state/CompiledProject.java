package evenrise.solver.engine.state;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * A project compiled for the search: everything by index, nothing that moves. Indexes follow the project's order; node 0
 * is the supply and node {@code panel + 1} a panel.
 */
public final class CompiledProject {
    public static final int PROCESSING = 0;
    public static final int AUXILIARY = 1;
    public static final int AMPLIFIER = 2;
    public static final int NONE = -1;
    private static final int SMALL = 50;

    public final Project project;
    public final int phaseCount;
    public final Load[] loads;
    public final int panelCount;
    public final int boardCount;

    public final List<Place> places = new ArrayList<>();
    public final List<Output> outputs = new ArrayList<>();
    public final List<Setting> settings = new ArrayList<>();

    /** Place of a breaker by panel, slot (from 1) and poles (from 1); null where it does not fit. */
    public final Place[][][] placeAt;
    /** Phases that a node has, as a mask. */
    public final int[] phasesOf;
    /** First project-wide slot of each panel; one more entry than panels. */
    public final int[] firstSlot;
    /** First project-wide output of each board; one more entry than boards. */
    public final int[] firstOutput;

    public final int[] role;
    public final boolean[] switched;
    public final boolean[] drops;
    public final int[] poles;
    public final long[] settleMicros;
    /** Shutdown group of a load, or {@link #NONE}. */
    public final int[] group;

    public final BitSet[] allowedPanels;
    /** By load, the places that are left out since a motor would turn backwards there; null where none are. */
    private final BitSet[] turnsBackwards;

    public final int[] fixedSlot;
    public final int[] fixedBoard;
    public final int[] fixedOutput;

    public final int groupCount;
    public final int[][] groupMembers;
    public final boolean[] groupSamePanel;
    /** Whether a group has more loads than any board has outputs. */
    public final boolean[] groupIsLarge;

    /** Offered start delays, from short to long; those that are longer than the whole sequence may be are left out. */
    public final Setting[][] startDelays;

    public final Setting[][] steps;
    public final BitSet[] reach;
    /** The same as {@link #reach}, to draw from. */
    public final int[][] reachedPanels;

    public final int[] boardPanel;
    /** The board that starts a board, or {@link #NONE}. */
    public final int[] after;
    /** Boards in an order in which each comes behind the one that starts it. */
    public final int[] boardOrder;
    /** The boards that each board starts. */
    public final int[][] followers;

    /** By load: the boards that could switch it, given its panels, its group's size and what is fixed. */
    public final int[][] nearbyBoards;

    public final Currents currents;
    public final Limits limits;
    public final Pairs pairs;
    public final Instants instants;
    public final EnvelopeRows envelopes;
    final EventLoad eventLoad;
    /** What a load without a place or output is charged. */
    final long unassignedCharge;

    public CompiledProject(Project project) {
        this(project, false);
    }

    /** @param placesAll whether a place that breaks a rating is better than none */
    public CompiledProject(Project project, boolean placesAll) {
        List<PlantPart> beyond = PlantPart.beyondSearch(project);
        if (!beyond.isEmpty()) {
            throw new IllegalArgumentException("not planned yet: " + PlantPart.listed(beyond));
        }
        this.project = project;
        unassignedCharge = placesAll ? Charges.unassignedAtAnyCurrent(project) : Charges.UNASSIGNED;
        List<Phase> phases = project.supply().system().phases();
        phaseCount = phases.size();
        loads = project.loads().toArray(Load[]::new);
        panelCount = project.panels().size();
        boardCount = project.boards().size();
        Map<String, Integer> panelIndex = new HashMap<>();
        project.panels().forEach(panel -> panelIndex.put(panel.id(), panelIndex.size()));
        Map<String, Integer> boardIndex = new HashMap<>();
        project.boards().forEach(board -> boardIndex.put(board.id(), boardIndex.size()));
        Map<String, Integer> groupIndex = new HashMap<>();
        project.shutdownGroups().forEach(group -> groupIndex.put(group.id(), groupIndex.size()));
        Map<String, BoardType> types = new HashMap<>();
        project.boardTypes().forEach(type -> types.put(type.id(), type));

        firstSlot = new int[panelCount + 1];
        phasesOf = new int[panelCount + 1];
        phasesOf[0] = (1 << phaseCount) - 1;
        placeAt = new Place[panelCount][][];
        for (int panel = 0; panel < panelCount; panel++) {
            layOutPanel(panel, project.panels().get(panel), phases);
        }

        firstOutput = new int[boardCount + 1];
        startDelays = new Setting[boardCount][];
        steps = new Setting[boardCount][];
        reach = new BitSet[boardCount];
        reachedPanels = new int[boardCount][];
        boardPanel = new int[boardCount];
        after = new int[boardCount];
        Map<String, Setting[]> delaysOf = new HashMap<>();
        Map<String, Setting[]> stepsOf = new HashMap<>();
        for (int board = 0; board < boardCount; board++) {
            Board given = project.boards().get(board);
            BoardType type = types.get(given.type());
            startDelays[board] = delaysOf.computeIfAbsent(type.id(), id -> usefulDelays(type));
            steps[board] = stepsOf.computeIfAbsent(type.id(), id -> settings(type.stepSeconds()));
            firstOutput[board + 1] = firstOutput[board] + type.outputs();
            for (int ordinal = 0; ordinal < type.outputs(); ordinal++) {
                outputs.add(new Output(outputs.size(), board, ordinal));
            }
            BitSet reached = new BitSet();
            given.reaches().forEach(id -> reached.set(panelIndex.get(id)));
            reach[board] = reached;
            reachedPanels[board] = reached.stream().toArray();
            boardPanel[board] = panelIndex.get(given.panel());
            after[board] = given.after().map(boardIndex::get).orElse(NONE);
        }
        followers = followers();
        boardOrder = boardOrder();

        int count = loads.length;
        role = new int[count];
        switched = new boolean[count];
        drops = new boolean[count];
        poles = new int[count];
        settleMicros = new long[count];
        group = new int[count];
        allowedPanels = AllowedPanels.of(project, panelIndex, placeAt, phaseCount);
        turnsBackwards = RotationKept.narrow(project, placeAt, allowedPanels);
        fixedSlot = new int[count];
        fixedBoard = new int[count];
        fixedOutput = new int[count];
        groupCount = groupIndex.size();
        List<List<Integer>> members = new ArrayList<>();
        groupIndex.forEach((id, index) -> members.add(new ArrayList<>()));
        for (int load = 0; load < count; load++) {
            Load given = loads[load];
            role[load] = given.role().ordinal();
            switched[load] = given.switched();
            poles[load] = given.poles();
            settleMicros[load] = Math.round(given.settleSeconds() * 1e6);
            group[load] = given.shutdownGroup().map(groupIndex::get).orElse(NONE);
            if (group[load] != NONE && given.switched()) {
                members.get(group[load]).add(load);
                drops[load] = project.shutdownGroups().get(group[load]).onEmergency() == OnEmergency.DROP;
            }
            fixedSlot[load] = given.fixed().slot().orElse(NONE);
            fixedBoard[load] = given.fixed().board().map(boardIndex::get).orElse(NONE);
            fixedOutput[load] = given.fixed().output().orElse(NONE);
        }
        int largestBoard = 0;
        for (int board = 0; board < boardCount; board++) {
            largestBoard = Math.max(largestBoard, outputCount(board));
        }
        groupMembers = new int[groupCount][];
        groupSamePanel = new boolean[groupCount];
        groupIsLarge = new boolean[groupCount];
        for (int g = 0; g < groupCount; g++) {
            groupMembers[g] =
                    members.get(g).stream().mapToInt(Integer::intValue).toArray();
            ShutdownGroup given = project.shutdownGroups().get(g);
            groupSamePanel[g] = given.samePanel();
            groupIsLarge[g] = groupMembers[g].length > largestBoard;
        }
        nearbyBoards = nearbyBoards();
        currents = new Currents(project);
        limits = new Limits(project);
        pairs = new Pairs(project);
        instants = new InstantFinder(this).find();
        envelopes = new EnvelopeRows(project, instants);
        eventLoad = new EventLoad(this);
    }

    /** Whether there are moves enough for each load to try bold ones that seldom pay; found by experiment. */
    public boolean isSmall() {
        return loads.length <= SMALL;
    }

    public int loadCount() {
        return loads.length;
    }

    public int outputCount(int board) {
        return firstOutput[board + 1] - firstOutput[board];
    }

    public int slotCount() {
        return firstSlot[panelCount];
    }

    public Output output(int board, int ordinal) {
        return outputs.get(firstOutput[board] + ordinal);
    }

    /** Instants at which a load may come on without making the sequence too long. */
    public int usefulInstants() {
        int count = instants.size();
        while (count > 1 && instants.micros(count - 1) - Charges.TIME_TOLERANCE_MICROS > limits.durationMicros) {
            count--;
        }
        return count;
    }

    /** Whether the place keeps the load's poles, allowed panels, fixed part, the slots' kind and a motor's rotation. */
    public boolean mayTake(int load, Place place) {
        return place.poles() == poles[load]
                && (turnsBackwards[load] == null || !turnsBackwards[load].get(place.index()))
                && allowedPanels[load].get(place.panel())
                && (fixedSlot[load] == NONE || fixedSlot[load] == place.slot())
                && (!switched[load] || place.takesSwitched());
    }

    /** Whether the output keeps the load's fixed part. */
    public boolean mayUse(int load, Output output) {
        return switched[load]
                && (fixedBoard[load] == NONE || fixedBoard[load] == output.board())
                && (fixedOutput[load] == NONE || fixedOutput[load] == output.ordinal() + 1);
    }

    /** Boards for each load; a group's loads share one list, and so do loads that are free of every restriction. */
    private int[][] nearbyBoards() {
        int[][] boards = new int[loads.length][];
        Map<BitSet, int[]> known = new HashMap<>();
        Map<List<Object>, BitSet> suitable = new HashMap<>();
        for (int load = 0; load < boards.length; load++) {
            int self = group[load];
            boolean whole = self != NONE && switched[load] && !groupIsLarge[self];
            int[] together = whole ? groupMembers[self] : new int[] {load};
            BitSet fitting = new BitSet();
            if (switched[load]) {
                fitting.or(longEnough(together.length));
                for (int member : together) {
                    fitting.and(suitable.computeIfAbsent(
                            List.of(allowedPanels[member], fixedBoard[member], fixedOutput[member]),
                            alike -> boardsThatSuit(member)));
                }
            }
            boards[load] = known.computeIfAbsent(fitting, set -> set.stream().toArray());
        }
        return boards;
    }

    private BitSet longEnough(int outputs) {
        BitSet boards = new BitSet();
        IntStream.range(0, boardCount)
                .filter(board -> outputCount(board) >= outputs)
                .forEach(boards::set);
        return boards;
    }

    private BitSet boardsThatSuit(int load) {
        BitSet boards = new BitSet();
        IntStream.range(0, boardCount).filter(board -> suits(load, board)).forEach(boards::set);
        return boards;
    }

    private boolean suits(int load, int board) {
        boolean hasOutput = fixedOutput[load] == NONE || fixedOutput[load] <= outputCount(board);
        boolean mayBeIt = fixedBoard[load] == NONE || fixedBoard[load] == board;
        return hasOutput && mayBeIt && reach[board].intersects(allowedPanels[load]);
    }

    private void layOutPanel(int panel, Panel given, List<Phase> phases) {
        firstSlot[panel + 1] = firstSlot[panel] + given.slots();
        SlotLayout layout = new SlotLayout(given, project.supply().system());
        layout.phases().forEach(phase -> phasesOf[panel + 1] |= 1 << phases.indexOf(phase));
        placeAt[panel] = new Place[given.slots() + 1][phaseCount + 1];
        for (int slot = 1; slot <= given.slots(); slot++) {
            for (int poleCount = 1; poleCount <= phaseCount; poleCount++) {
                List<Integer> span = layout.span(slot, poleCount);
                if (span.isEmpty() || span.stream().anyMatch(given.reservedSlots()::contains)) {
                    continue;
                }
                int mask = 0;
                for (int s : span) {
                    mask |= 1 << phases.indexOf(layout.phase(s));
                }
                if (Integer.bitCount(mask) == poleCount) {
                    boolean takesSwitched = given.switchedSlots()
                            .map(kept -> kept.containsAll(span))
                            .orElse(true);
                    int[] slots = span.stream()
                            .mapToInt(s -> firstSlot[panel] + s - 1)
                            .toArray();
                    Place place = new Place(places.size(), panel, slot, slots, mask, takesSwitched);
                    places.add(place);
                    placeAt[panel][slot][poleCount] = place;
                }
            }
        }
    }

    private Setting[] usefulDelays(BoardType type) {
        double limit = project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY);
        List<Double> useful = type.startDelaySeconds().stream()
                .filter(delay -> delay <= limit)
                .toList();
        return settings(useful.isEmpty() ? type.startDelaySeconds() : useful);
    }

    private Setting[] settings(List<Double> seconds) {
        List<Double> sorted = seconds.stream().sorted().toList();
        Setting[] made = new Setting[sorted.size()];
        for (int i = 0; i < made.length; i++) {
            made[i] = Setting.of(i, sorted.get(i));
            settings.add(made[i]);
        }
        return made;
    }

    private int[][] followers() {
        List<List<Integer>> lists = new ArrayList<>();
        for (int board = 0; board < boardCount; board++) {
            lists.add(new ArrayList<>());
        }
        for (int board = 0; board < boardCount; board++) {
            if (after[board] != NONE) {
                lists.get(after[board]).add(board);
            }
        }
        return lists.stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    private int[] boardOrder() {
        int[] order = new int[boardCount];
        int filled = 0;
        for (int board = 0; board < boardCount; board++) {
            if (after[board] == NONE) {
                order[filled++] = board;
            }
        }
        for (int next = 0; next < filled; next++) {
            for (int follower : followers[order[next]]) {
                order[filled++] = follower;
            }
        }
        return order;
    }
}
