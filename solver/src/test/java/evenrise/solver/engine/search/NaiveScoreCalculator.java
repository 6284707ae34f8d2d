package evenrise.solver.engine.search;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseAngle;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.Load;
import evenrise.model.project.Overlap;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.model.rules.SceneCurrents.InScene;
import evenrise.model.sequence.StepTimes;
import evenrise.solver.engine.state.Charges;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Setting;
import evenrise.solver.engine.state.Winding;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.WeakHashMap;
import java.util.function.ToDoubleFunction;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import org.optaplanner.core.api.score.calculator.EasyScoreCalculator;

/**
 * The score of a plan, from scratch and in the plainest way: every load, pair and instant is looked at, by the model's own
 * functions. It shares with the search only how a broken rule is charged and in which units sums are kept.
 */
public final class NaiveScoreCalculator implements EasyScoreCalculator<WorkingPlan, HardSoftLongScore> {
    /** What plans are compared with, by compiled project: the engine makes calculators itself. */
    private static final Map<CompiledProject, Plan> EARLIER = new WeakHashMap<>();

    /** From now on plans of that project are compared with an earlier one. */
    static void compare(CompiledProject compiled, Plan earlier) {
        EARLIER.put(compiled, earlier);
    }

    @Override
    public HardSoftLongScore calculateScore(WorkingPlan plan) {
        return new Look(plan).score();
    }

    /** One load as it sits; {@code output} is that of the load behind whose contactor it is, where it is. */
    private record Seat(Load load, int index, Place place, Output output, long onMicros) {
        boolean isOn() {
            return output != null;
        }

        boolean needsOutput() {
            return load.switched() && load.comesWith().isEmpty();
        }

        /** Whether it takes an output itself. */
        boolean hasOutput() {
            return output != null && load.comesWith().isEmpty();
        }

        boolean isComplete() {
            return place != null && (hasOutput() || !needsOutput());
        }

        int panel() {
            return place.panel();
        }
    }

    /** A load as a node sees it: how much of its envelope is on each phase. */
    private record Seen(Seat seat, double[] parts) {}

    /** What of a load returns by a node's neutral. */
    private record Returned(Seat seat, Phase phase, double part) {}

    private static final class Look {
        private final CompiledProject compiled;
        private final Project project;
        private final ProjectIndex index;
        private final Distribution distribution;
        private final List<InScene> scenes;
        private final List<Seat> seats = new ArrayList<>();
        private final Map<String, Seat> byId = new HashMap<>();
        private final Map<Integer, TreeMap<Integer, Seat>> boards = new TreeMap<>();
        private final Map<String, BoardSetting> settings = new HashMap<>();
        private final Map<Integer, Integer> boardRoots = new HashMap<>();

        Look(WorkingPlan plan) {
            compiled = plan.compiled();
            project = compiled.project;
            index = new ProjectIndex(project);
            distribution = index.distribution();
            scenes = SceneCurrents.of(index).scenes();
            for (BoardSetup board : plan.boards()) {
                String id = boardId(board.board());
                settings.put(
                        id,
                        typeOf(board.board()).isTimedByOutput()
                                ? BoardSetting.ofEach(id)
                                : new BoardSetting(
                                        id,
                                        board.getStartDelay().seconds(),
                                        board.getStep().seconds()));
            }
            StepTimes times = times(plan);
            Map<String, LoadPlacement> placements = new HashMap<>();
            plan.loads()
                    .forEach(each ->
                            placements.put(project.loads().get(each.load()).id(), each));
            for (LoadPlacement load : plan.loads()) {
                Load given = index.load(project.loads().get(load.load()).id()).orElseThrow();
                Output output =
                        given.comesWith().map(placements::get).orElse(load).getOutput();
                double on = output == null ? 0 : times.onSeconds(boardId(output.board()), output.ordinal() + 1);
                Seat seat = new Seat(given, load.load(), load.getPlace(), output, Math.round(on * 1e6));
                seats.add(seat);
                byId.put(given.id(), seat);
                if (seat.hasOutput()) {
                    boards.computeIfAbsent(output.board(), b -> new TreeMap<>()).put(output.ordinal(), seat);
                }
            }
        }

        /** Boards are timed one after another: what an output with a time of its own asks for counts from its board's start. */
        private StepTimes times(WorkingPlan plan) {
            Map<String, Integer> lastUsed = new HashMap<>();
            for (LoadPlacement load : plan.loads()) {
                if (load.getOutput() != null) {
                    lastUsed.merge(
                            boardId(load.getOutput().board()), load.getOutput().ordinal() + 1, Math::max);
                }
            }
            Map<String, Map<Integer, Double>> asked = new HashMap<>();
            Set<String> timed = new HashSet<>();
            while (timed.size() < project.boards().size()) {
                StepTimes sofar = new StepTimes(project, settings, lastUsed, asked);
                for (int board = 0; board < project.boards().size(); board++) {
                    String id = boardId(board);
                    boolean isNext = project.boards()
                            .get(board)
                            .after()
                            .map(timed::contains)
                            .orElse(true);
                    if (isNext && timed.add(id) && typeOf(board).isTimedByOutput()) {
                        asked.put(id, asked(plan, board, sofar.beginSeconds(id)));
                        break; // what follows it begins otherwise now
                    }
                }
            }
            return new StepTimes(project, settings, lastUsed, asked);
        }

        private Map<Integer, Double> asked(WorkingPlan plan, int board, double begin) {
            Map<Integer, Double> asked = new HashMap<>();
            for (LoadPlacement load : plan.loads()) {
                if (load.getOutput() != null && load.getOutput().board() == board) {
                    asked.put(load.getOutput().ordinal() + 1, begin + offered(board, load.getTime()));
                }
            }
            return asked;
        }

        /** The offered time next to a wanted one, the earlier of equally near; the first where none is wanted. */
        private double offered(int board, Setting wanted) {
            double limit = project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY);
            List<Double> all = typeOf(board).timesSeconds().orElseThrow().all().stream()
                    .sorted()
                    .toList();
            List<Double> inTime = all.stream().filter(each -> each <= limit).toList();
            List<Double> choice = inTime.isEmpty() ? all : inTime;
            double best = choice.get(0);
            for (double each : choice) {
                if (wanted != null
                        && Math.abs(Math.round(each * 1e6) - wanted.micros())
                                < Math.abs(Math.round(best * 1e6) - wanted.micros())) {
                    best = each;
                }
            }
            return best;
        }

        /** No move may put two loads on one output or in one slot: what never happens is not charged. */
        private void expectRoomOfItsOwnForEachLoad() {
            Map<Object, Seat> taken = new HashMap<>();
            for (Seat seat : seats) {
                List<Object> takes = new ArrayList<>();
                if (seat.place != null) {
                    for (int slot : seat.place.slots()) {
                        takes.add(slot);
                    }
                }
                if (seat.hasOutput()) {
                    takes.add(seat.output);
                }
                for (Object each : takes) {
                    Seat other = taken.put(each, seat);
                    if (other != null) {
                        throw new AssertionError("loads '" + other.load.id() + "' and '" + seat.load.id()
                                + "' both take " + (each instanceof Output ? each : "project-wide slot " + each));
                    }
                }
            }
        }

        HardSoftLongScore score() {
            expectRoomOfItsOwnForEachLoad();
            long hard = unassignedAndUnreached()
                    + pairs()
                    + roles()
                    + groups()
                    + boardsInOrder()
                    + systems()
                    + fixedTimes()
                    + spareSlots()
                    + nodes();
            return HardSoftLongScore.of(-hard, -objective());
        }

        private String boardId(int board) {
            return project.boards().get(board).id();
        }

        private BoardType typeOf(int board) {
            return index.typeOf(project.boards().get(board));
        }

        private long unassignedAndUnreached() {
            long charge = 0;
            for (Seat seat : seats) {
                charge += seat.isComplete() ? 0 : Charges.UNASSIGNED;
                if (seat.place != null && seat.hasOutput()) {
                    String panel = project.panels().get(seat.panel()).id();
                    boolean reached =
                            project.boards().get(seat.output.board()).reaches().contains(panel);
                    charge += reached ? 0 : Charges.PLACE;
                }
            }
            return charge;
        }

        private long pairs() {
            long charge = 0;
            for (Seat seat : seats) {
                for (String id : seat.load.apartFrom()) {
                    charge += bothSit(seat, byId.get(id))
                                    && seat.panel() == byId.get(id).panel()
                            ? Charges.PLACE
                            : 0;
                }
                for (String id : seat.load.comesWith().stream().toList()) {
                    charge += bothSit(seat, byId.get(id))
                                    && seat.panel() != byId.get(id).panel()
                            ? Charges.PLACE
                            : 0;
                }
                for (String id : seat.load.samePhaseAs()) {
                    Seat other = byId.get(id);
                    boolean differ = bothSit(seat, other)
                            && (seat.place.phaseMask() != other.place.phaseMask() || origin(seat) != origin(other));
                    charge += differ ? Charges.PLACE : 0;
                }
                for (String id : seat.load.comesAfter()) {
                    Seat before = byId.get(id);
                    if (seat.isOn() && before.isOn()) {
                        long settled = before.onMicros + Math.round(before.load.settleSeconds() * 1e6);
                        charge += Charges.late(settled - seat.onMicros);
                    }
                }
            }
            return charge;
        }

        private static boolean bothSit(Seat one, Seat other) {
            return one.place != null && other.place != null;
        }

        private int origin(Seat seat) {
            return distribution.of(project.panels().get(seat.panel())).origin();
        }

        private long roles() {
            long charge = 0;
            long longest = 0;
            double limit = project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY);
            for (Optional<String> system : systemIds()) {
                List<Seat> own = seats.stream()
                        .filter(seat -> seat.isOn() && seat.load.system().equals(system))
                        .toList();
                Set<Optional<String>> awaited = awaited(system);
                List<Seat> processing = seats.stream()
                        .filter(seat -> seat.isOn()
                                && seat.load.role() == Role.PROCESSING
                                && awaited.contains(seat.load.system()))
                        .toList();
                long last = own.stream().mapToLong(Seat::onMicros).max().orElse(0);
                longest = Math.max(longest, last);
                charge += early(own, processing);
                charge += project.hasClocks() && Double.isFinite(limit)
                        ? Charges.late(last - Math.round(limit * 1e6))
                        : 0;
            }
            return charge
                    + (!project.hasClocks() && Double.isFinite(limit)
                            ? Charges.late(longest - Math.round(limit * 1e6))
                            : 0);
        }

        private List<Optional<String>> systemIds() {
            return project.systems().isEmpty()
                    ? List.of(Optional.empty())
                    : project.systems().stream()
                            .map(each -> Optional.of(each.id()))
                            .toList();
        }

        /** A system and, where one command starts all, what it needs. */
        private Set<Optional<String>> awaited(Optional<String> system) {
            Set<Optional<String>> all = new HashSet<>(Set.of(system));
            boolean grows = !project.hasClocks();
            while (grows) {
                grows = false;
                for (SwitchedSystem each : project.systems()) {
                    if (all.contains(Optional.of(each.id()))) {
                        for (String needed : each.needs()) {
                            grows |= all.add(Optional.of(needed));
                        }
                    }
                }
            }
            return all;
        }

        private static long early(List<Seat> own, List<Seat> processing) {
            long processingOn =
                    processing.stream().mapToLong(Seat::onMicros).max().orElse(0);
            long processingSettled = processing.stream()
                    .mapToLong(seat -> seat.onMicros + Math.round(seat.load.settleSeconds() * 1e6))
                    .max()
                    .orElse(0);
            long auxiliaryOn = own.stream()
                    .filter(seat -> seat.load.role() == Role.AUXILIARY)
                    .mapToLong(Seat::onMicros)
                    .max()
                    .orElse(0);
            long charge = 0;
            for (Seat seat : own) {
                if (seat.load.role() == Role.AMPLIFIER) {
                    charge += Charges.late(processingSettled - seat.onMicros);
                    charge += Charges.late(auxiliaryOn - seat.onMicros);
                } else if (seat.load.role() == Role.AUXILIARY) {
                    charge += Charges.late(processingOn - seat.onMicros);
                }
            }
            return charge;
        }

        private boolean seatsGroupsWhole(int board) {
            return typeOf(board).groups() == GroupSeating.ONE_BOARD;
        }

        private long groups() {
            int largestBoard = 0;
            for (int board = 0; board < project.boards().size(); board++) {
                largestBoard = Math.max(
                        largestBoard, seatsGroupsWhole(board) ? typeOf(board).outputs() : 0);
            }
            long charge = 0;
            for (ShutdownGroup group : project.shutdownGroups()) {
                List<Seat> members =
                        seats.stream().filter(seat -> isOf(seat, group)).toList();
                Set<Integer> onBoards = new HashSet<>();
                Map<Integer, Integer> inPanels = new HashMap<>();
                for (Seat seat : members) {
                    if (seat.output != null) {
                        onBoards.add(seat.output.board());
                    }
                    if (seat.place != null) {
                        inPanels.merge(seat.panel(), 1, Integer::sum);
                    }
                }
                if (members.size() <= largestBoard) {
                    boolean binds = onBoards.stream().anyMatch(this::seatsGroupsWhole);
                    charge += binds ? Charges.PLACE * (onBoards.size() - 1) : 0;
                } else {
                    for (int board : onBoards) {
                        long strangers = boards.get(board).values().stream()
                                .filter(seat -> !isOf(seat, group))
                                .count();
                        charge += seatsGroupsWhole(board) ? Charges.PLACE * strangers : 0;
                    }
                }
                int placed =
                        inPanels.values().stream().mapToInt(Integer::intValue).sum();
                int most = inPanels.values().stream().max(Integer::compare).orElse(0);
                charge += group.samePanel() ? Charges.PLACE * (placed - most) : 0;
            }
            return charge;
        }

        /** Loads behind the contactor of another sit in its panel, and take no output: they do not count. */
        private static boolean isOf(Seat seat, ShutdownGroup group) {
            return seat.needsOutput() && seat.load.shutdownGroup().equals(Optional.of(group.id()));
        }

        private long boardsInOrder() {
            long charge = 0;
            for (Map.Entry<Integer, TreeMap<Integer, Seat>> each : boards.entrySet()) {
                TreeMap<Integer, Seat> board = each.getValue();
                BoardType type = typeOf(each.getKey());
                long drops = board.values().stream().filter(this::drops).count();
                charge += type.emergencyBy() == EmergencyBy.OUTPUT
                        ? 0
                        : Charges.PLACE * Math.min(drops, board.size() - drops);
                charge += Charges.PLACE * Math.max(0, board.size() + type.spareOutputs() - type.outputs());
                Set<String> seen = new HashSet<>();
                Optional<String> previous = Optional.empty();
                for (Seat seat : board.values()) {
                    Optional<String> group = seat.load.shutdownGroup();
                    boolean begins = group.isPresent() && !group.equals(previous);
                    boolean isAgain = begins && !seen.add(group.get());
                    charge += isAgain && seatsGroupsWhole(each.getKey()) ? Charges.PLACE : 0;
                    previous = group;
                }
            }
            return charge;
        }

        private boolean drops(Seat seat) {
            return seat.load.switched() && index.drops(seat.load);
        }

        /** Loads on a board that are not of the system that has most there, of the stated one alone; and who goes before it. */
        private long systems() {
            long charge = 0;
            if (!project.systems().isEmpty()) {
                for (Map.Entry<Integer, TreeMap<Integer, Seat>> each : boards.entrySet()) {
                    Board board = project.boards().get(each.getKey());
                    Map<String, Long> counts = new HashMap<>();
                    each.getValue().values().forEach(seat -> counts.merge(systemOf(seat), 1L, Long::sum));
                    long most = counts.entrySet().stream()
                            .filter(one -> board.system().isEmpty()
                                    || board.system().get().equals(one.getKey()))
                            .mapToLong(Map.Entry::getValue)
                            .max()
                            .orElse(0);
                    charge += Charges.PLACE * (each.getValue().size() - most);
                    int before = usedBefore(each.getKey());
                    boolean differ = before >= 0
                            && !boards.get(before).values().stream()
                                    .map(Look::systemOf)
                                    .collect(java.util.stream.Collectors.toSet())
                                    .equals(counts.keySet());
                    charge += differ ? Charges.PLACE : 0;
                }
            }
            return charge;
        }

        private static String systemOf(Seat seat) {
            return seat.load.system().orElseThrow();
        }

        private int usedBefore(int board) {
            int before = compiled.after[board];
            while (before >= 0 && !boards.containsKey(before)) {
                before = compiled.after[before];
            }
            return before;
        }

        private long fixedTimes() {
            long charge = 0;
            for (Seat seat : seats) {
                if (seat.isOn() && seat.load.fixed().onSeconds().isPresent()) {
                    long fixed = Math.round(seat.load.fixed().onSeconds().getAsDouble() * 1e6);
                    charge += Charges.late(Math.abs(fixed - seat.onMicros));
                }
            }
            return charge;
        }

        private long spareSlots() {
            long charge = 0;
            for (int panel = 0; panel < project.panels().size(); panel++) {
                Panel given = project.panels().get(panel);
                Optional<Spare> spare = project.spareIn(given);
                if (spare.isPresent()) {
                    TreeSet<Integer> free = new TreeSet<>();
                    for (int slot = 1; slot <= given.slots(); slot++) {
                        free.add(slot);
                    }
                    given.reservedSlots().forEach(free::remove);
                    SlotLayout layout = index.slotsOf(given);
                    for (Seat seat : seats) {
                        if (seat.place != null && seat.panel() == panel) {
                            layout.span(seat.place.slot(), seat.load.poles()).forEach(free::remove);
                        }
                    }
                    long switched = free.stream()
                            .filter(slot -> given.switchedSlots()
                                    .map(all -> all.contains(slot))
                                    .orElse(true))
                            .count();
                    int room = room(layout, free, 1, given.slots(), spare.get().poles());
                    charge += Charges.PLACE
                            * (Math.max(0, spare.get().slots() - free.size())
                                    + Math.max(0, spare.get().switchedSlots() - switched)
                                    + Math.max(0, spare.get().fits() - room));
                }
            }
            return charge;
        }

        /** The most breakers that fit at once: each slot from below begins one or begins none. */
        private static int room(SlotLayout layout, Set<Integer> free, int from, int slots, int poles) {
            int slot = from;
            while (slot <= slots && !fits(layout, free, slot, poles)) {
                slot++;
            }
            if (slot > slots) {
                return 0;
            }
            Set<Integer> left = new HashSet<>(free);
            left.removeAll(layout.span(slot, poles));
            // Whatever else takes one of these slots begins above: it may as well be left out for this one.
            return 1 + room(layout, left, slot + 1, slots, poles);
        }

        private static boolean fits(SlotLayout layout, Set<Integer> free, int slot, int poles) {
            List<Integer> span = layout.span(slot, poles);
            return !span.isEmpty()
                    && free.containsAll(span)
                    && span.stream().map(layout::phase).distinct().count() == poles;
        }

        private long nodes() {
            long charge = 0;
            List<NodeLimits> limits = NodeLimits.of(project);
            for (Point point : distribution.points()) {
                NodeLimits limit = limits.get(point.index());
                double left = point.panel()
                        .flatMap(project::spareIn)
                        .map(Spare::runningPercent)
                        .orElse(0.0);
                for (int scene = 0; scene < scenes.size(); scene++) {
                    long[] sums = sums(point, scene);
                    for (int phase = 0; phase < Winding.PHASES; phase++) {
                        charge += Charges.overMilliAmps(sums[phase] - Math.round(limit.continuousAmps() * 1e9));
                        charge += left > 0
                                ? Charges.overMilliAmps(
                                        sums[phase] - Math.round(limit.continuousAmps() * (1 - left / 100) * 1e9))
                                : 0;
                    }
                    charge += Charges.overMilliAmps(neutralNano(point, scene) - limit.neutralAmps() * 1e9);
                }
                if (limit.inrushLimitAmps().isPresent()) {
                    double inrush = limit.inrushLimitAmps().getAsDouble();
                    double excess = peakUnits(point) / compiled.envelopes.unitsPerAmp - inrush;
                    charge += Charges.overMilliAmps(excess * 1e9);
                    charge += events(point, inrush);
                }
            }
            return charge;
        }

        // ---- what a node feeds, from the loads up

        private List<Point> fedBy(Point point) {
            return distribution.points().stream()
                    .filter(each -> each.parent() == point.index())
                    .toList();
        }

        private List<Seat> in(Point point) {
            return seats.stream()
                    .filter(seat -> seat.place != null && seat.panel() + 1 == point.index())
                    .toList();
        }

        /** Everything that a node feeds, as it sees it. */
        private List<Seen> here(Point point) {
            List<Seen> all = new ArrayList<>();
            for (Seat seat : in(point)) {
                double[] parts = new double[Winding.PHASES];
                for (int phase = 0; phase < parts.length; phase++) {
                    parts[phase] = touches(seat, phase) ? 1 : 0;
                }
                all.add(new Seen(seat, parts));
            }
            for (Point fed : fedBy(point)) {
                Optional<TransformerDraw> draw = fed.transformer();
                here(fed)
                        .forEach(each -> all.add(
                                draw.isEmpty()
                                        ? each
                                        : new Seen(each.seat, draw.get().envelope(each.parts))));
            }
            return all;
        }

        private List<Returned> returned(Point point) {
            List<Returned> all = new ArrayList<>();
            for (Seat seat : in(point)) {
                if (Integer.bitCount(seat.place.phaseMask()) == 1) {
                    Phase phase = Phase.values()[Integer.numberOfTrailingZeros(seat.place.phaseMask())];
                    all.add(new Returned(seat, phase, 1));
                }
            }
            for (Point fed : fedBy(point)) {
                if (fed.transformer().isEmpty()) {
                    all.addAll(returned(fed));
                } else {
                    TransformerDraw draw = fed.transformer().get();
                    if (draw.passesNeutralOn()) {
                        returned(fed)
                                .forEach(
                                        each -> all.add(new Returned(each.seat, each.phase, draw.ratio() * each.part)));
                    }
                    if (draw.returnsByNeutral()) {
                        Phase phase = draw.primaryPhases().get(0);
                        here(fed)
                                .forEach(each -> all.add(
                                        new Returned(each.seat, phase, draw.envelope(each.parts)[phase.ordinal()])));
                    }
                }
            }
            return all;
        }

        /** Running currents in units of 1 nA: magnitudes, fundamentals and third harmonics, as {@link Winding} lays them out. */
        private long[] sums(Point point, int scene) {
            long[] sums = new long[Winding.SIZE];
            in(point).forEach(seat -> add(seat, point.system(), scene, sums));
            for (Point fed : fedBy(point)) {
                long[] below = sums(fed, scene);
                long[] drawn = below;
                if (fed.transformer().isPresent()) {
                    drawn = new long[Winding.SIZE];
                    new Winding(
                                    fed.node().orElseThrow().transformer().orElseThrow(),
                                    point.system(),
                                    fed.transformer().get())
                            .draw(below, drawn, 0);
                }
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += drawn[i];
                }
            }
            return sums;
        }

        private void add(Seat seat, PhaseSystem system, int scene, long[] sums) {
            double amps = amps(seat, scene);
            double ratio = seat.load.harmonicRatio();
            double fundamental = amps / Math.sqrt(1 + ratio * ratio);
            List<Phase> touched = system.phases().stream()
                    .filter(phase -> touches(seat, phase.ordinal()))
                    .toList();
            for (Phase phase : touched) {
                double angle = touched.size() == 2
                        ? PhaseAngle.radiansBetween(system, phase, touched.get(phase == touched.get(0) ? 1 : 0))
                        : PhaseAngle.radians(system, phase);
                double lagging = angle - Lag.of(seat.load).radians();
                long nano = Math.round(fundamental * 1e9);
                sums[phase.ordinal()] += Math.round(amps * 1e9);
                sums[Winding.PHASES + phase.ordinal()] += Math.round(nano * Math.cos(lagging));
                sums[2 * Winding.PHASES + phase.ordinal()] += Math.round(nano * Math.sin(lagging));
                sums[3 * Winding.PHASES + phase.ordinal()] += Math.round(ratio * fundamental * 1e9);
            }
        }

        private double amps(Seat seat, int scene) {
            return scenes.get(scene).runningAmps().get(seat.load.id());
        }

        private static boolean touches(Seat seat, int phase) {
            return seat.place != null && (seat.place.phaseMask() >> phase & 1) != 0;
        }

        private double neutralNano(Point point, int scene) {
            long real = 0;
            long imaginary = 0;
            long third = 0;
            for (Returned each : returned(point)) {
                NeutralCurrent.Share share = NeutralCurrent.share(
                        point.system(),
                        each.phase,
                        amps(each.seat, scene),
                        Lag.of(each.seat.load),
                        each.seat.load.harmonicRatio());
                real += Math.round(each.part * Math.round(share.realAmps() * 1e9));
                imaginary += Math.round(each.part * Math.round(share.imaginaryAmps() * 1e9));
                third += Math.round(each.part * Math.round(share.thirdAmps() * 1e9));
            }
            return Math.sqrt((double) real * real + (double) imaginary * imaginary + (double) third * third);
        }

        // ---- peaks

        private long peakUnits(Point point) {
            List<Seen> all = here(point);
            long peak = 0;
            for (int phase = 0; phase < Winding.PHASES; phase++) {
                peak = Math.max(peak, project.hasClocks() ? clocksUnits(all, phase) : clockUnits(all, phase));
            }
            return peak;
        }

        /** U + max over s of (max(P, F) of s + F of the rest), or U + the sum of max(P, F). */
        private long clocksUnits(List<Seen> all, int phase) {
            List<Seen> always =
                    all.stream().filter(each -> !each.seat.load.switched()).toList();
            long uses = useUnits(always, phase);
            long greatest = 0;
            long sum = uses;
            for (SwitchedSystem one : project.systems()) {
                long starting = Math.max(clockUnits(of(all, one), phase), useUnits(of(all, one), phase));
                sum += starting;
                long others = 0;
                for (SwitchedSystem other : project.systems()) {
                    others += other.equals(one) ? 0 : useUnits(of(all, other), phase);
                }
                greatest = Math.max(greatest, starting + others);
            }
            return project.overlap() == Overlap.ANY ? sum : uses + greatest;
        }

        private static List<Seen> of(List<Seen> all, SwitchedSystem system) {
            return all.stream()
                    .filter(each -> each.seat.isOn() && each.seat.load.system().equals(Optional.of(system.id())))
                    .toList();
        }

        private long useUnits(List<Seen> some, int phase) {
            return some.stream()
                    .filter(each -> each.parts[phase] > 0)
                    .mapToLong(each -> units(each.parts[phase], mostAmps(each.seat)))
                    .sum();
        }

        /** √2 times the greatest current of a load in any scene, or idling. */
        private double mostAmps(Seat seat) {
            double most = seat.load.idleAmps();
            for (int scene = 0; scene < scenes.size(); scene++) {
                // In units of running currents: the search has no others.
                most = Math.max(most, Math.round(amps(seat, scene) * 1e9) / 1e9);
            }
            return Math.sqrt(2) * most;
        }

        private long clockUnits(List<Seen> some, int phase) {
            long peak = unitsAt(some, phase, -1); // unswitched loads alone
            for (Seen instant : some) {
                if (instant.seat.isOn() && instant.parts[phase] > 0) {
                    peak = Math.max(peak, unitsAt(some, phase, instant.seat.onMicros));
                }
            }
            return peak;
        }

        private long unitsAt(List<Seen> some, int phase, long micros) {
            long sum = 0;
            for (Seen each : some) {
                Seat seat = each.seat;
                if (each.parts[phase] > 0) {
                    InrushEnvelope envelope = InrushEnvelope.of(seat.load, project.timingToleranceSeconds());
                    if (!seat.load.switched()) {
                        sum += units(each.parts[phase], envelope.baseAmps());
                    } else if (seat.isOn() && seat.onMicros <= micros) {
                        double later = (micros - seat.onMicros) / 1e6;
                        sum += units(each.parts[phase], envelope.amps(0, envelope.startSeconds(later)));
                    }
                }
            }
            return sum;
        }

        private long units(double part, double amps) {
            return Math.round(part * amps * compiled.envelopes.unitsPerAmp);
        }

        // ---- what happens

        private Behaviour behaviour() {
            return project.behaviourOrDefault();
        }

        private long events(Point point, double inrush) {
            long charge = 0;
            for (PlanEvent event : behaviour().inrushLimitHoldsFor()) {
                long worst = 0;
                for (int phase = 0; phase < Winding.PHASES; phase++) {
                    worst = Math.max(worst, new EventPeak(point, phase).units(event));
                }
                double excess = worst / compiled.envelopes.unitsPerAmp - inrush;
                charge += Charges.overMilliAmps(excess * 1e9);
            }
            return charge;
        }

        /** What comes back from rest, alone: on one clock, or system by system, others in full use whatever the scenes. */
        private long backUnits(List<Seen> some, int phase) {
            if (!project.hasClocks()) {
                return clockUnits(some, phase);
            }
            long greatest = 0;
            long sum = 0;
            for (SwitchedSystem one : project.systems()) {
                long starting = Math.max(clockUnits(of(some, one), phase), sum(of(some, one), phase, this::useAmps));
                sum += starting;
                long others = 0;
                for (SwitchedSystem other : project.systems()) {
                    others += other.equals(one) ? 0 : sum(of(some, other), phase, this::useAmps);
                }
                greatest = Math.max(greatest, starting + others);
            }
            return project.overlap() == Overlap.ANY ? sum : greatest + sum(some, phase, this::leftBeforeAnotherAmps);
        }

        private long sum(List<Seen> some, int phase, ToDoubleFunction<Seat> amps) {
            return some.stream()
                    .mapToLong(each -> units(each.parts[phase], amps.applyAsDouble(each.seat)))
                    .sum();
        }

        private double useAmps(Seat seat) {
            return Math.sqrt(2) * Math.max(seat.load.idleAmps(), seat.load.runningAmps());
        }

        private double baseAmps(Seat seat) {
            return Math.sqrt(2) * seat.load.idleAmps();
        }

        private double anewAmps(Seat seat) {
            return useAmps(seat) + Math.max(0, seat.load.inrushAmps() - baseAmps(seat));
        }

        private double returningAmps(Seat seat) {
            return staysOff(seat) ? useAmps(seat) : anewAmps(seat);
        }

        private double leftAfterWaitAmps(Seat seat) {
            double wait = behaviour().steadyWaitSeconds() - project.timingToleranceSeconds();
            return staysOff(seat) ? 0 : leftAmps(seat, wait);
        }

        private double leftBeforeAnotherAmps(Seat seat) {
            return leftAmps(seat, behaviour().betweenSystemsSeconds() - 2 * project.timingToleranceSeconds());
        }

        private double leftAmps(Seat seat, double seconds) {
            return InrushEnvelope.of(seat.load, project.timingToleranceSeconds())
                    .excessLeftAmps(Math.max(0, seconds));
        }

        private boolean staysOff(Seat seat) {
            boolean isMotor =
                    seat.load.equipment().filter(it -> it.motor().isPresent()).isPresent();
            return isMotor && behaviour().motorsResume().equals(Optional.of(Resume.STAY_OFF));
        }

        /** The supply or source that feeds in the end what switches a load. */
        private int boardRoot(Seat seat) {
            return boardRoots.computeIfAbsent(seat.output.board(), any -> foundBoardRoot(seat));
        }

        private int foundBoardRoot(Seat seat) {
            Board board = project.boards().get(seat.output.board());
            String fedBy = board.fedBy().orElse(board.panel());
            Seat feeder = byId.get(fedBy);
            boolean isByLoad = distribution.point(fedBy).isEmpty();
            if (isByLoad) {
                fedBy = feeder.place == null
                        ? board.panel()
                        : project.panels().get(feeder.panel()).id();
            }
            return distribution.top(distribution.point(fedBy).orElseThrow()).index();
        }

        /** What transformers below a node draw of one phase by themselves. */
        private double energisingAmps(Point point, int phase, double afterSeconds) {
            double amps = 0;
            for (Point each : distribution.points()) {
                if (each.transformer().isPresent()) {
                    double[] drawn = new double[Winding.PHASES];
                    each.transformer()
                            .get()
                            .primaryPhases()
                            .forEach(primary -> drawn[primary.ordinal()] = each.node()
                                    .orElseThrow()
                                    .transformer()
                                    .orElseThrow()
                                    .energisingAmps(afterSeconds));
                    double[] passed = drawn;
                    int at = each.parent();
                    while (at >= 0 && at != point.index()) {
                        Point passing = distribution.points().get(at);
                        passed = passing.transformer().isPresent()
                                ? passing.transformer().get().envelope(passed)
                                : passed;
                        at = passing.parent();
                    }
                    amps += at < 0 ? 0 : passed[phase];
                }
            }
            return amps;
        }

        /** One phase of a node when something happens. */
        private final class EventPeak {
            private final Point point;
            private final int phase;
            private final List<Seen> live;
            private final List<Seen> always;
            private final List<Seen> on;
            private final int root;

            EventPeak(Point point, int phase) {
                this.point = point;
                this.phase = phase;
                root = distribution.top(point).index();
                live = here(point).stream()
                        .filter(each -> each.parts[phase] > 0 && (each.seat.isOn() || !each.seat.load.switched()))
                        .toList();
                always =
                        live.stream().filter(each -> !each.seat.load.switched()).toList();
                on = live.stream().filter(each -> each.seat.isOn()).toList();
            }

            long units(PlanEvent event) {
                return switch (event) {
                    case RETURN -> returnUnits();
                    case RELEASE -> seats.stream().anyMatch(Look.this::drops) ? releaseUnits() : 0;
                    case BOARD_FAILURE -> project.boards().isEmpty() ? 0 : boardFailureUnits();
                    case DIP -> sum(live, phase, Look.this::anewAmps) + energising(0);
                };
            }

            private long use(List<Seen> some) {
                return sum(some, phase, Look.this::useAmps);
            }

            private long energising(double afterSeconds) {
                return Look.this.units(1, energisingAmps(point, phase, afterSeconds));
            }

            /** On boards that another source feeds: they do not see this one fail. */
            private List<Seen> staying() {
                return on.stream().filter(each -> boardRoot(each.seat) != root).toList();
            }

            private long atOnce() {
                return sum(always, phase, Look.this::returningAmps)
                        + sum(staying(), phase, Look.this::returningAmps)
                        + energising(0);
            }

            private long afterwards() {
                double wait = Math.max(0, behaviour().steadyWaitSeconds() - project.timingToleranceSeconds());
                long sequence = project.hasClocks()
                        ? use(always) + backUnits(on, phase)
                        : clockUnits(live, phase) + use(always) - sum(always, phase, Look.this::baseAmps);
                return sequence
                        + sum(always, phase, Look.this::leftAfterWaitAmps)
                        + use(staying())
                        + sum(staying(), phase, Look.this::leftAfterWaitAmps)
                        + energising(wait);
            }

            private long returnUnits() {
                long worst = Math.max(atOnce(), afterwards());
                for (Point source : distribution.points()) {
                    if (source.isFurtherSource()) {
                        worst = Math.max(worst, use(live));
                    }
                    if (source.parent() < 0 && source.index() != root) {
                        worst = Math.max(
                                worst,
                                replaced(on.stream()
                                        .filter(each -> boardRoot(each.seat) == source.index())
                                        .toList()));
                    }
                }
                return worst;
            }

            /** Some come on again, all else is in use. */
            private long replaced(List<Seen> some) {
                return use(live) - use(some) + backUnits(some, phase);
            }

            private long releaseUnits() {
                long worst =
                        released(on.stream().filter(each -> drops(each.seat)).toList());
                if (project.systems().size() > 1) {
                    worst = Math.max(worst, use(live));
                    for (SwitchedSystem system : project.systems()) {
                        worst = Math.max(
                                worst,
                                released(of(on, system).stream()
                                        .filter(each -> drops(each.seat))
                                        .toList()));
                    }
                }
                return worst;
            }

            private long released(List<Seen> dropped) {
                return use(live)
                        - use(dropped)
                        + backUnits(
                                dropped.stream()
                                        .filter(each -> !staysOff(each.seat))
                                        .toList(),
                                phase);
            }

            private long boardFailureUnits() {
                boolean waits = behaviour().deadBoard() == DeadBoard.STOP;
                long worst = Math.max(use(live) + (waits ? waitedUnits() : 0), Math.max(atOnce(), afterwards()));
                for (int board = 0; board < project.boards().size(); board++) {
                    int dead = board;
                    List<Seen> own = on.stream()
                            .filter(each -> each.seat.output.board() == dead)
                            .toList();
                    if (behaviour().deadContacts() == DeadContacts.STAY) {
                        worst = Math.max(worst, atOnce() + sum(own, phase, Look.this::returningAmps));
                        worst = Math.max(
                                worst, afterwards() + use(own) + sum(own, phase, Look.this::leftAfterWaitAmps));
                    }
                    worst = Math.max(
                            worst,
                            replaced(on.stream()
                                    .filter(each -> isStartedBy(each.seat.output.board(), dead))
                                    .toList()));
                }
                return worst;
            }

            private long waitedUnits() {
                if (!project.hasClocks()) {
                    return excessUnits(on);
                }
                long greatest = 0;
                long sum = 0;
                for (SwitchedSystem system : project.systems()) {
                    greatest = Math.max(greatest, excessUnits(of(on, system)));
                    sum += excessUnits(of(on, system));
                }
                return project.overlap() == Overlap.ANY ? sum : greatest;
            }

            /** The greatest sum of what is above the bases of those on; base by base taken off. */
            private long excessUnits(List<Seen> some) {
                long peak = 0;
                for (Seen instant : some) {
                    List<Seen> sofar = some.stream()
                            .filter(each -> each.seat.onMicros <= instant.seat.onMicros)
                            .toList();
                    peak = Math.max(
                            peak,
                            unitsAt(sofar, phase, instant.seat.onMicros) - sum(sofar, phase, Look.this::baseAmps));
                }
                return peak;
            }
        }

        private boolean isStartedBy(int board, int head) {
            return board == head
                    || compiled.after[board] != CompiledProject.NONE && isStartedBy(compiled.after[board], head);
        }

        // ---- the objective

        private long objective() {
            var weights = project.objective();
            double peaks = 0;
            double sources = 0;
            double panels = 0;
            double inner = 0;
            List<NodeLimits> limits = NodeLimits.of(project);
            for (Point point : distribution.points()) {
                double deviation =
                        deviationNano(point, limits.get(point.index()).phases()) / 1e9;
                if (point.panel().isPresent()) {
                    panels += deviation;
                } else if (point.isSupply() || point.isFurtherSource()) {
                    sources += deviation;
                    peaks += peakUnits(point) / compiled.envelopes.unitsPerAmp;
                } else {
                    inner += deviation;
                }
            }
            long lastOn = seats.stream()
                    .filter(Seat::isOn)
                    .mapToLong(Seat::onMicros)
                    .max()
                    .orElse(0);
            return Math.round(1000
                    * (weights.peakInrush() * peaks
                            + weights.supplyImbalance() * sources
                            + weights.panelImbalance() * panels
                            + weights.duration() * lastOn / 1e6
                            + weights.boards() * boards.size()
                            + weights.nodeImbalance() * inner
                            + racks(weights.rackPanels(), weights.rackBoards(), weights.rackRows())
                            + weights.move() * moves()));
        }

        /** Largest distance from the mean of the phases that a node has; of scenes the mean by weight. */
        private long deviationNano(Point point, List<Phase> phases) {
            double mean = 0;
            for (int scene = 0; scene < scenes.size(); scene++) {
                long[] all = sums(point, scene);
                long total = 0;
                for (Phase phase : phases) {
                    total += all[phase.ordinal()];
                }
                long largest = 0;
                for (Phase phase : phases) {
                    largest = Math.max(largest, Math.abs(all[phase.ordinal()] * phases.size() - total));
                }
                if (scenes.size() == 1) {
                    return largest / phases.size();
                }
                mean += scenes.get(scene).share() * largest;
            }
            return Math.round(mean / phases.size());
        }

        private double racks(double panelWeight, double boardWeight, double rowWeight) {
            double cost = 0;
            Set<String> racks = new TreeSet<>();
            seats.forEach(seat -> seat.load.rack().ifPresent(racks::add));
            for (String rack : racks) {
                Set<String> onBoards = new HashSet<>();
                Map<Integer, TreeSet<Integer>> rows = new HashMap<>();
                for (Seat seat : seats) {
                    if (seat.load.rack().equals(Optional.of(rack))) {
                        if (seat.hasOutput()) {
                            onBoards.add(boardId(seat.output.board()));
                        }
                        if (seat.place != null) {
                            SlotLayout layout = index.slotsOf(project.panels().get(seat.panel()));
                            layout.span(seat.place.slot(), seat.load.poles())
                                    .forEach(slot -> rows.computeIfAbsent(seat.panel(), any -> new TreeSet<>())
                                            .add(layout.row(slot)));
                        }
                    }
                }
                cost += panelWeight * Math.max(0, rows.size() - 1) + boardWeight * Math.max(0, onBoards.size() - 1);
                for (TreeSet<Integer> taken : rows.values()) {
                    cost += rowWeight * (taken.last() - taken.first() + 1 - taken.size());
                }
            }
            return cost;
        }

        private int moves() {
            Plan earlier = EARLIER.get(compiled);
            if (earlier == null) {
                return 0;
            }
            int moves = 0;
            Map<String, Double> had = new HashMap<>();
            for (Assignment before : earlier.assignments()) {
                Seat seat = byId.get(before.load());
                if (before.board().isPresent()) {
                    had.put(
                            before.board().get() + "/" + before.output().getAsInt(),
                            before.onSeconds().orElse(0));
                }
                if (seat != null && seat.place != null) {
                    boolean stays = before.panel()
                                    .equals(project.panels().get(seat.panel()).id())
                            && before.slot() == seat.place.slot();
                    Optional<String> lead = before.board()
                            .map(board -> board + "/" + before.output().getAsInt());
                    moves += (stays ? 0 : 1) + (lead.equals(leadOf(seat)) ? 0 : 1);
                }
            }
            for (BoardSetting before : earlier.boards()) {
                BoardSetting now = settings.get(before.id());
                moves += now == null || now.equals(before) ? 0 : 1;
            }
            for (Seat seat : seats) {
                if (seat.hasOutput() && typeOf(seat.output.board()).isTimedByOutput()) {
                    Double before = had.get(leadOf(seat).orElseThrow());
                    moves += before != null && Math.abs(before * 1e6 - seat.onMicros) > 500 ? 1 : 0;
                }
            }
            return moves;
        }

        private Optional<String> leadOf(Seat seat) {
            return seat.hasOutput()
                    ? Optional.of(boardId(seat.output.board()) + "/" + (seat.output.ordinal() + 1))
                    : Optional.empty();
        }
    }
}
