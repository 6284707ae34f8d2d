package evenrise.solver.engine.state;

import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.OffTiming;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.PassesOn;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.engine.PhaseShares;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A project compiled for the search: everything by index, nothing that moves. Indexes follow the project's order; node 0
 * is the supply, node {@code panel + 1} a panel, and what follows a further node.
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

    public final FeederTree tree;
    /** By project-wide slot. */
    final boolean[] reserved;

    /** By panel, whether odd slots are on one side and even ones on the other. */
    private final boolean[] alternates;

    public final int[] role;
    /** Whether a load comes on by a command, by an output of its own or with another load. */
    public final boolean[] switched;
    /** Whether a load needs an output of its own. */
    public final boolean[] needsOutput;
    /** Whether its breaker is a switched one; behind a contactor it is an ordinary one. */
    public final boolean[] needsSwitchedSlot;
    /** The load behind whose contactor a load is; the load itself where it is behind no other's. */
    public final int[] leadOf;
    /** A load, then those behind its contactor: what sits in one panel. */
    public final int[][] bundle;
    /** Whether any load is behind another's contactor. */
    final boolean hasBundles;
    /** Whether it matters at what time single loads come on, beside all others. */
    final boolean hasSingleTimes;

    /** System of a load, or {@link #NONE}. */
    public final int[] systemOf;
    /** System that a board is of, or {@link #NONE} where any may be. */
    public final int[] boardSystem;

    public final boolean hasSystems;
    /** At least 1: all loads are one system where the project has none. */
    public final int systemCount;
    /** Whether systems start by commands of their own. */
    public final boolean hasClocks;

    public final int clockCount;

    /** Rack of a load, or {@link #NONE}. */
    public final int[] rackOf;

    public final int rackCount;
    /** By rack: its loads. */
    public final int[][] rackMembers;

    /** Whether it matters which rows a rack's breakers take. */
    public final boolean rowsCount;

    /** Whether it matters how far racks are spread. */
    public final boolean racksCount;

    /** Whether there is more than one supply with panels, one command and plain boards. */
    public final boolean hasFurtherParts;
    /** When a load is fixed to come on, or {@link #NONE}. */
    public final long[] fixedOnMicros;

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
    /** Offered times of a board's outputs that are drawn from, sorted, where each has its own; else null. */
    public final Setting[][] times;

    final boolean[] passesOnAfterAll;
    public final boolean[] seatsGroupsWhole;
    public final boolean[] dropsByOutput;
    private final int[] spareOutputs;
    private final boolean[] goesOffLate;
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
    /** What each load draws as it is; and the parts of it that are seen beyond transformers, by {@link FeederTree#shares}. */
    public final EnvelopeRows envelopes;

    final EnvelopeRows[] shares;
    /** What a new plan is compared with; null where nothing is. */
    final EarlierPlan earlier;

    /** Whether the objective weighs nodes, racks or moves. */
    final boolean hasTidiness;

    final EventLoad eventLoad;
    /** By load, how much more an amplifier draws above its base as it comes on than amplifiers do on average, in thousandths of that. */
    public final long[] lean;

    /** On which phases loads had best sit. */
    public final PhaseWishes wishes;
    /** What a load without a place or output is charged. */
    final long unassignedCharge;

    public CompiledProject(Project project) {
        this(project, false, Optional.empty());
    }

    /**
     * The same, to be planned with care for what there is.
     *
     * @param placesAll whether a place that breaks a rating is better than none
     * @param earlier a plan from which every move costs what the objective says
     */
    public CompiledProject(Project project, boolean placesAll, Optional<Plan> earlier) {
        this(project, placesAll, earlier, PhaseShares.NONE);
    }

    /**
     * The same, to be planned with guidance.
     *
     * @param guidance who had best sit on which phases
     */
    public CompiledProject(Project project, boolean placesAll, Optional<Plan> earlier, PhaseShares guidance) {
        this.project = project;
        hasFurtherParts = PlantPart.isUsedIn(project);
        ProjectIndex index = new ProjectIndex(project);
        tree = new FeederTree(project);
        phaseCount = Arrays.stream(tree.systems)
                .mapToInt(system -> system.phases().size())
                .max()
                .orElseThrow();
        loads = project.loads().stream()
                .map(load -> index.load(load.id()).orElseThrow())
                .toArray(Load[]::new);
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
        phasesOf = new int[tree.nodeCount];
        Arrays.setAll(phasesOf, node -> (1 << tree.systems[node].phases().size()) - 1);
        placeAt = new Place[panelCount][][];
        for (int panel = 0; panel < panelCount; panel++) {
            layOutPanel(panel, project.panels().get(panel));
        }
        alternates = new boolean[panelCount];
        reserved = new boolean[firstSlot[panelCount]];
        for (int panel = 0; panel < panelCount; panel++) {
            alternates[panel] = project.panels().get(panel).numbering() == SlotNumbering.ALTERNATING;
            for (int slot : project.panels().get(panel).reservedSlots()) {
                reserved[firstSlot[panel] + slot - 1] = true;
            }
        }
        hasSystems = !project.systems().isEmpty();
        systemCount = Math.max(1, project.systems().size());
        hasClocks = project.hasClocks();
        clockCount = hasClocks ? systemCount : 1;
        Map<String, Integer> systemIndex = new HashMap<>();
        project.systems().forEach(system -> systemIndex.put(system.id(), systemIndex.size()));

        firstOutput = new int[boardCount + 1];
        startDelays = new Setting[boardCount][];
        steps = new Setting[boardCount][];
        reach = new BitSet[boardCount];
        reachedPanels = new int[boardCount][];
        boardPanel = new int[boardCount];
        after = new int[boardCount];
        times = new Setting[boardCount][];
        passesOnAfterAll = new boolean[boardCount];
        seatsGroupsWhole = new boolean[boardCount];
        dropsByOutput = new boolean[boardCount];
        spareOutputs = new int[boardCount];
        goesOffLate = new boolean[boardCount];
        boardSystem = new int[boardCount];
        Map<String, Setting[]> timesOf = new HashMap<>();
        Map<String, Setting[]> delaysOf = new HashMap<>();
        Map<String, Setting[]> stepsOf = new HashMap<>();
        for (int board = 0; board < boardCount; board++) {
            Board given = project.boards().get(board);
            BoardType type = types.get(given.type());
            boolean isEach = type.isTimedByOutput();
            startDelays[board] =
                    delaysOf.computeIfAbsent(type.id(), id -> isEach ? nothing() : useful(type.startDelaySeconds()));
            steps[board] = stepsOf.computeIfAbsent(type.id(), id -> isEach ? nothing() : settings(type.stepSeconds()));
            times[board] = isEach
                    ? timesOf.computeIfAbsent(
                            type.id(),
                            id -> useful(type.timesSeconds().orElseThrow().all()))
                    : null;
            passesOnAfterAll[board] = type.passesOn() == PassesOn.ALL;
            seatsGroupsWhole[board] = type.groups() == GroupSeating.ONE_BOARD;
            dropsByOutput[board] = type.emergencyBy() == EmergencyBy.OUTPUT;
            spareOutputs[board] = type.spareOutputs();
            goesOffLate[board] = type.off() == OffTiming.EACH;
            boardSystem[board] = given.system().map(systemIndex::get).orElse(NONE);
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
        needsOutput = new boolean[count];
        needsSwitchedSlot = new boolean[count];
        leadOf = new int[count];
        systemOf = new int[count];
        rackOf = new int[count];
        fixedOnMicros = new long[count];
        Map<String, Integer> loadIndex = new HashMap<>();
        Map<String, Integer> rackIndex = new HashMap<>();
        project.loads().forEach(load -> loadIndex.put(load.id(), loadIndex.size()));
        drops = new boolean[count];
        poles = new int[count];
        settleMicros = new long[count];
        group = new int[count];
        allowedPanels = AllowedPanels.of(project, panelIndex, placeAt, phaseCount, tree);
        turnsBackwards = RotationKept.narrow(project, placeAt, allowedPanels, tree);
        fixedSlot = new int[count];
        fixedBoard = new int[count];
        fixedOutput = new int[count];
        groupCount = groupIndex.size();
        List<List<Integer>> members = new ArrayList<>();
        groupIndex.forEach((id, at) -> members.add(new ArrayList<>()));
        for (int load = 0; load < count; load++) {
            Load given = loads[load];
            role[load] = given.role().ordinal();
            switched[load] = given.switched();
            leadOf[load] = given.comesWith().map(loadIndex::get).orElse(load);
            needsOutput[load] = given.switched() && leadOf[load] == load;
            needsSwitchedSlot[load] = needsOutput[load] && given.switchedBy() == SwitchedBy.BREAKER;
            systemOf[load] = given.system().map(systemIndex::get).orElse(NONE);
            rackOf[load] = given.rack()
                    .map(id -> rackIndex.computeIfAbsent(id, any -> rackIndex.size()))
                    .orElse(NONE);
            fixedOnMicros[load] = given.fixed().onSeconds().isPresent()
                    ? Math.round(given.fixed().onSeconds().getAsDouble() * 1e6)
                    : NONE;
            poles[load] = given.poles();
            settleMicros[load] = Math.round(given.settleSeconds() * 1e6);
            group[load] = given.shutdownGroup().map(groupIndex::get).orElse(NONE);
            if (group[load] != NONE && given.switched()) {
                if (needsOutput[load]) {
                    members.get(group[load]).add(load);
                }
                drops[load] = project.shutdownGroups().get(group[load]).onEmergency() == OnEmergency.DROP;
            }
            fixedSlot[load] = given.fixed().slot().orElse(NONE);
            fixedBoard[load] = given.fixed().board().map(boardIndex::get).orElse(NONE);
            fixedOutput[load] = given.fixed().output().orElse(NONE);
        }
        rackCount = rackIndex.size();
        rackMembers = new int[rackCount][];
        Arrays.setAll(
                rackMembers,
                rack -> IntStream.range(0, count)
                        .filter(load -> rackOf[load] == rack)
                        .toArray());
        bundle = bundles();
        hasBundles = Arrays.stream(bundle).anyMatch(together -> together.length > 1);
        int largestBoard = index.largestBoardOutputs();
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
        currents = new Currents(index, phaseCount, tree);
        limits = new Limits(project);
        pairs = new Pairs(project);
        instants = SparseTimes.find(this);
        envelopes = new EnvelopeRows(this);
        shares = new EnvelopeRows[tree.shares.length];
        Arrays.setAll(shares, share -> share == 0 ? envelopes : new EnvelopeRows(this, share));
        ObjectiveWeights weights = project.objective();
        hasTidiness = weights.nodeImbalance() > 0
                || weights.rackPanels() > 0
                || weights.rackBoards() > 0
                || weights.rackRows() > 0
                || weights.move() > 0;
        rowsCount = weights.rackRows() > 0;
        racksCount = weights.rackPanels() + weights.rackBoards() + weights.rackRows() > 0;
        this.earlier = earlier.map(plan -> new EarlierPlan(this, plan)).orElse(null);
        hasSingleTimes = this.earlier != null || Arrays.stream(fixedOnMicros).anyMatch(fixed -> fixed != NONE);
        lean = lean();
        wishes = new PhaseWishes(this, guidance);
        eventLoad = new EventLoad(this);
        unassignedCharge = placesAll ? Charges.unassignedAtAnyCurrent(this) : Charges.UNASSIGNED;
    }

    /**
     * Whether loads have nothing to do with each other beyond one supply, one command, groups and roles: no further nodes,
     * events, racks or earlier plan that count, and no limits on inrush but the supply's.
     */
    public boolean isPlain() {
        return !hasFurtherParts
                && !hasBundles
                && !hasTidiness
                && earlier == null
                && !eventLoad.isAsked()
                && !limits.areBelowSupply();
    }

    private long[] lean() {
        double[] excess = new double[loads.length];
        double sum = 0;
        int count = 0;
        for (int load = 0; load < loads.length; load++) {
            if (switched[load] && role[load] == AMPLIFIER) {
                excess[load] = poles[load] * (loads[load].inrushAmps() - loads[load].baseAmps());
                sum += excess[load];
                count++;
            }
        }
        long[] leans = new long[loads.length];
        for (int load = 0; load < loads.length && sum > 0; load++) {
            leans[load] =
                    switched[load] && role[load] == AMPLIFIER ? Math.round(1000 * (excess[load] * count / sum - 1)) : 0;
        }
        return leans;
    }

    /** Whether outputs of some boards have times of their own. */
    public boolean hasTimes() {
        return Arrays.stream(times).anyMatch(Objects::nonNull);
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
                && (!needsSwitchedSlot[load] || place.takesSwitched());
    }

    /** Whether the output keeps the load's fixed part. */
    public boolean mayUse(int load, Output output) {
        return needsOutput[load]
                && (!hasFurtherParts || serves(output.board(), load))
                && (fixedBoard[load] == NONE || fixedBoard[load] == output.board())
                && (fixedOutput[load] == NONE || fixedOutput[load] == output.ordinal() + 1);
    }

    /** Whether a board may switch a load of this system, and switch it off as late as it asks. */
    private boolean serves(int board, int load) {
        return (boardSystem[board] == NONE || boardSystem[board] == systemOf[load])
                && (goesOffLate[board] || loads[load].offAfterSeconds() == 0);
    }

    /** Outputs of a board that may be in use at once. */
    public int usableOutputs(int board) {
        return outputCount(board) - spareOutputs[board];
    }

    /** The clock by which a load comes on. */
    public int clockOf(int load) {
        return hasClocks ? systemOf[load] : 0;
    }

    /** The order of roles that a load is part of. */
    public int orderOf(int load) {
        return hasSystems ? systemOf[load] : 0;
    }

    /** Row of a panel's project-wide slot, from 1. */
    public int rowOf(int panel, int slot) {
        return alternates[panel] ? (slot - firstSlot[panel]) / 2 + 1 : slot - firstSlot[panel] + 1;
    }

    /** Slot in a row of a panel, as people number it: the only one, or one of two sides; {@link #NONE} where there is none. */
    public int slotInRow(int panel, int row, boolean isRight) {
        int slot = alternates[panel] ? 2 * row - (isRight ? 0 : 1) : row;
        return slot >= 1 && slot <= firstSlot[panel + 1] - firstSlot[panel] ? slot : NONE;
    }

    /** Every set of phases that a breaker of so many poles can touch in a panel. */
    public int[] phaseMasks(int panel, int poleCount) {
        return Arrays.stream(placeAt[panel])
                .skip(1)
                .map(byPoles -> byPoles[poleCount])
                .filter(Objects::nonNull)
                .mapToInt(Place::phaseMask)
                .distinct()
                .toArray();
    }

    private int[][] bundles() {
        List<List<Integer>> lists = new ArrayList<>();
        for (int load = 0; load < loads.length; load++) {
            lists.add(new ArrayList<>(List.of(load)));
        }
        for (int load = 0; load < loads.length; load++) {
            if (leadOf[load] != load) {
                lists.get(leadOf[load]).add(load);
            }
        }
        return lists.stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    /** Boards for each load; a group's loads share one list, and so do loads that are free of every restriction. */
    private int[][] nearbyBoards() {
        int[][] boards = new int[loads.length][];
        Map<BitSet, int[]> known = new HashMap<>();
        Map<List<Object>, BitSet> suitable = new HashMap<>();
        for (int load = 0; load < boards.length; load++) {
            int self = group[load];
            boolean whole = self != NONE && needsOutput[load] && !groupIsLarge[self];
            int[] together = whole ? groupMembers[self] : new int[] {load};
            BitSet fitting = new BitSet();
            if (needsOutput[load]) {
                fitting.or(longEnough(together.length));
                for (int member : together) {
                    fitting.and(suitable.computeIfAbsent(
                            List.of(
                                    allowedPanels[member],
                                    fixedBoard[member],
                                    fixedOutput[member],
                                    systemOf[member],
                                    loads[member].offAfterSeconds() > 0),
                            alike -> boardsThatSuit(member)));
                }
                if (fitting.isEmpty() && whole) {
                    fitting = boardsThatSuit(load); // no board for all of the group, but for a part of it
                    fitting.andNot(boardsForWholeGroups());
                }
            }
            boards[load] = known.computeIfAbsent(fitting, set -> set.stream().toArray());
        }
        return boards;
    }

    private BitSet longEnough(int outputs) {
        BitSet boards = new BitSet();
        IntStream.range(0, boardCount)
                .filter(board -> usableOutputs(board) >= outputs || !seatsGroupsWhole[board])
                .forEach(boards::set);
        return boards;
    }

    private BitSet boardsForWholeGroups() {
        BitSet boards = new BitSet();
        IntStream.range(0, boardCount).filter(board -> seatsGroupsWhole[board]).forEach(boards::set);
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
        return hasOutput && mayBeIt && serves(board, load) && reach[board].intersects(allowedPanels[load]);
    }

    private void layOutPanel(int panel, Panel given) {
        firstSlot[panel + 1] = firstSlot[panel] + given.slots();
        SlotLayout layout = new SlotLayout(given, tree.systems[panel + 1]);
        phasesOf[panel + 1] = 0;
        layout.phases().forEach(phase -> phasesOf[panel + 1] |= 1 << phase.ordinal());
        placeAt[panel] = new Place[given.slots() + 1][phaseCount + 1];
        for (int slot = 1; slot <= given.slots(); slot++) {
            for (int poleCount = 1; poleCount <= phaseCount; poleCount++) {
                List<Integer> span = layout.span(slot, poleCount);
                if (span.isEmpty() || span.stream().anyMatch(given.reservedSlots()::contains)) {
                    continue;
                }
                int mask = 0;
                for (int s : span) {
                    mask |= 1 << layout.phase(s).ordinal();
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

    private Setting[] useful(List<Double> offered) {
        double limit = project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY);
        List<Double> useful =
                offered.stream().filter(seconds -> seconds <= limit).toList();
        return settings(useful.isEmpty() ? offered : useful);
    }

    /** The one setting of what cannot be set. */
    private Setting[] nothing() {
        return settings(List.of(0.0));
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
