package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Subject;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Rules;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Plays a list of work step by step and has the referee judge the plant whenever it rests: after each step, save where
 * another switching follows at once. It knows nothing of how the list came about: it keeps its own account of which
 * breaker is in which slot, which lead on which output, what is on, what is dead and what is locked out.
 */
public final class Replay {
    private static final Set<WorkStepKind> SWITCHING = EnumSet.of(
            WorkStepKind.SYSTEM_OFF,
            WorkStepKind.SWITCH_OFF,
            WorkStepKind.LOCK_OUT,
            WorkStepKind.ISOLATE_PANEL,
            WorkStepKind.ISOLATE_BOARD,
            WorkStepKind.MAKE_READY,
            WorkStepKind.ENERGISE_PANEL,
            WorkStepKind.ENERGISE_BOARD,
            WorkStepKind.UNLOCK,
            WorkStepKind.ENERGISE,
            WorkStepKind.SWITCH_ON,
            WorkStepKind.SYSTEM_ON);

    private final BuiltPlant plant;
    private final ProjectIndex index;
    private final List<NodeLimits> limits;
    private final Harm start;
    private final Map<String, Seat> seats = new LinkedHashMap<>();
    private final OutputTimes times;
    private final Map<String, Set<String>> above = new HashMap<>();
    private final Map<String, BoardSetting> settings = new LinkedHashMap<>();
    private final Set<String> locked = new HashSet<>();
    private final Map<String, Set<String>> linesAsBuilt = new HashMap<>();
    /** Panels to which leads run whose breakers have gone to another. */
    private final Map<String, String> reached = new HashMap<>();

    private final List<SpareBreaker> spares;
    private final Set<String> deadPanels = new LinkedHashSet<>();
    private final Set<String> deadBoards = new LinkedHashSet<>();
    private final Set<String> notReady = new LinkedHashSet<>();
    private final Set<String> untested = new LinkedHashSet<>();
    private final Set<String> unlabelled = new LinkedHashSet<>();
    private final List<Breach> breaches = new ArrayList<>();
    private final Set<String> live;
    private int stage;
    private int step;

    /** One load as it is at the moment. */
    private static final class Seat {
        private final Load load;
        private String panel;
        private int slot;
        private Optional<String> board = Optional.empty();
        private OptionalInt output = OptionalInt.empty();
        private boolean isOn;

        Seat(Load load) {
            this.load = load;
        }

        Subject subject() {
            return WorkKind.load(load.id());
        }

        boolean hasSlot() {
            return panel != null;
        }
    }

    private Replay(BuiltPlant plant, Set<String> live) {
        this.plant = plant;
        Project project = plant.project();
        Plan built = plant.plan();
        this.live = live;
        this.spares = new ArrayList<>(plant.spares());
        index = new ProjectIndex(project);
        limits = NodeLimits.of(project);
        times = OutputTimes.of(index, built);
        index.distribution()
                .points()
                .forEach(point -> above.put(point.id(), Downstream.panelsAbove(index, point.id())));
        start = Harm.of(Layout.of(index, PlanFinisher.timed(project, built)), plant::counts);
        project.loads().stream()
                .flatMap(load -> index.load(load.id()).stream())
                .forEach(load -> seats.put(load.id(), new Seat(load)));
        built.boards().forEach(each -> settings.put(each.id(), each));
        for (Assignment each : built.assignments()) {
            Seat seat = seats.get(each.load());
            if (seat != null) {
                seat.panel = each.panel();
                seat.slot = each.slot();
                seat.board = each.board();
                seat.output = each.output();
                seat.isOn = true;
                linesAsBuilt.put(each.load(), Lines.of(index, each.load(), each.panel(), each.slot()));
            }
        }
    }

    /** Everything that the stages break on the way from {@code built} to {@code target}; nothing where they are sound. */
    public static List<Breach> of(Project project, Plan built, Plan target, List<WorkStage> stages) {
        return of(project, built, target, stages, Set.of());
    }

    /** @param live loads that may not be off on the way */
    public static List<Breach> of(Project project, Plan built, Plan target, List<WorkStage> stages, Set<String> live) {
        return of(BuiltPlant.of(project, built, Optional.empty()), target, stages, live);
    }

    static List<Breach> of(BuiltPlant plant, Plan target, List<WorkStage> stages, Set<String> live) {
        Replay replay = new Replay(plant, live);
        for (WorkStage each : stages) {
            replay.stage++;
            replay.step = 0;
            for (int i = 0; i < each.steps().size(); i++) {
                boolean goesOn = i + 1 < each.steps().size()
                        && SWITCHING.contains(each.steps().get(i).kind())
                        && SWITCHING.contains(each.steps().get(i + 1).kind());
                replay.play(each.steps().get(i));
                if (!goesOn) {
                    replay.judge();
                }
            }
            replay.endOfStage();
        }
        replay.arrivedAt(target);
        return List.copyOf(replay.breaches);
    }

    private void breach(BrokenRule found) {
        breaches.add(Breach.of(stage, step, found));
    }

    private void play(WorkStep next) {
        step++;
        if (next.load().filter(load -> !seats.containsKey(load)).isPresent()) {
            return; // The project knows this load no more, so that nothing is known of what it draws or waits for.
        }
        switch (next.kind()) {
            case SYSTEM_OFF -> systemOff(next.system());
            case SYSTEM_ON -> systemOn(next.system());
            case SWITCH_OFF -> off(seat(next));
            case LOCK_OUT -> {
                off(seat(next));
                locked.add(seat(next).load.id());
            }
            case ISOLATE_PANEL -> isolatePanel(next.panel().orElseThrow());
            case ISOLATE_BOARD -> isolateBoard(next.board().orElseThrow());
            case ENERGISE_PANEL -> energisePanel(next.panel().orElseThrow());
            case ENERGISE_BOARD -> {
                wantsReady();
                deadBoards.remove(next.board().orElseThrow());
            }
            case MAKE_READY -> notReady.clear();
            case FUNCTION_TEST -> {
                if (!seat(next).isOn) {
                    breach(WorkKind.TRIED_WHILE_OFF.about(seat(next).subject()));
                }
                untested.remove(seat(next).load.id());
            }
            case RELABEL -> unlabelled.clear();
            case CHECK_ROTATION -> wantsLock(seat(next));
            case UNLOCK -> unlock(seat(next));
            case ENERGISE -> {
                unlock(seat(next));
                on(seat(next));
            }
            case SWITCH_ON -> on(seat(next));
            case TAKE_OUT -> {
                wantsLock(seat(next));
                wantsDeadPanel(seat(next), Optional.ofNullable(seat(next).panel));
                moved(seat(next));
                Optional.ofNullable(seat(next).panel)
                        .ifPresent(panel -> reached.putIfAbsent(seat(next).load.id(), panel));
                seat(next).panel = null;
            }
            case REMOVE -> {
                wantsLock(seat(next));
                wantsDeadPanel(seat(next), Optional.ofNullable(seat(next).panel));
                removed(seat(next));
                seat(next).panel = null;
            }
            case LEAVE_SPARE -> leaveSpare(seat(next));
            case REMOVE_SPARE ->
                removeSpare(next.panel().orElseThrow(), next.slot().orElseThrow());
            case USE_SPARE -> {
                useSpare(seat(next), next.panel().orElseThrow(), next.slot().orElseThrow());
                moveBreaker(seat(next), next);
            }
            case REMOVE_LEAD -> {
                wantsLock(seat(next));
                wantsDeadBoard(seat(next), seat(next).board);
                removed(seat(next));
                seat(next).board = Optional.empty();
                seat(next).output = OptionalInt.empty();
            }
            case PARK, RE_TERMINATE, PUT_IN -> moveBreaker(seat(next), next);
            case LIFT_LEAD -> {
                wantsLock(seat(next));
                wantsDeadBoard(seat(next), seat(next).board);
                moved(seat(next));
                seat(next).board = Optional.empty();
                seat(next).output = OptionalInt.empty();
            }
            case RE_LAND -> moveLead(seat(next), next);
            case SET_OUTPUT ->
                times.set(
                        OutputTimes.key(
                                next.board().orElseThrow(), next.output().orElseThrow()),
                        next.timeSeconds().orElseThrow());
            case SET_BOARD ->
                settings.put(
                        next.board().orElseThrow(),
                        new BoardSetting(
                                next.board().orElseThrow(),
                                next.startDelaySeconds().orElseThrow(),
                                next.stepSeconds().orElseThrow()));
        }
    }

    private void judge() {
        seats.values().stream()
                .filter(seat -> !seat.isOn && live.contains(seat.load.id()))
                .forEach(seat -> breach(WorkKind.OFF_THOUGH_LIVE.about(seat.subject())));
        Harm.of(
                        Layout.of(index, plan(true)),
                        found -> plant.counts(found) && Rules.countsWhilePartsAreOff(found, index))
                .worseThan(start)
                .ifPresent(this::breach);
    }

    private Seat seat(WorkStep next) {
        return seats.get(next.load().orElseThrow());
    }

    private void wantsLock(Seat seat) {
        if (seat.isOn || !locked.contains(seat.load.id())) {
            breach(WorkKind.NOT_LOCKED_OUT.about(seat.subject()));
        }
    }

    /** There is nothing left to try; its labels go, and what it leaves behind is capped. */
    private void removed(Seat seat) {
        List.of(notReady, unlabelled).forEach(set -> set.add(seat.load.id()));
    }

    private void moved(Seat seat) {
        List.of(notReady, untested, unlabelled).forEach(set -> set.add(seat.load.id()));
    }

    private void isolatePanel(String panel) {
        deadPanels.add(panel);
        seats.values().stream()
                .filter(seat -> seat.isOn && (isDeadPanel(seat.panel) || isDeadBoard(control(seat).board)))
                .forEach(seat ->
                        breach(WorkKind.PANEL_ISOLATED_UNDER_LOAD.about(WorkKind.panel(panel), seat.subject())));
    }

    private void isolateBoard(String board) {
        deadBoards.add(board);
        seats.values().stream()
                .filter(seat -> seat.isOn && isDeadBoard(control(seat).board))
                .forEach(seat ->
                        breach(WorkKind.BOARD_ISOLATED_UNDER_LOAD.about(WorkKind.board(board), seat.subject())));
    }

    private void energisePanel(String panel) {
        wantsReady();
        above.getOrDefault(panel, Set.of()).stream()
                .filter(deadPanels::contains)
                .forEach(feeding ->
                        breach(WorkKind.LIVE_BEFORE_FEEDER.about(WorkKind.panel(panel), WorkKind.panel(feeding))));
        deadPanels.remove(panel);
    }

    /** A panel has no voltage where it is isolated, or another that feeds it; a node where one is that feeds it. */
    private boolean isDeadPanel(String panel) {
        return deadPanels.contains(panel)
                || above.getOrDefault(panel, Set.of()).stream().anyMatch(deadPanels::contains);
    }

    /** The load whose output switches this one: itself, or the one behind whose contactor it is. */
    private Seat control(Seat seat) {
        return seat.load.comesWith().map(seats::get).orElse(seat);
    }

    /** A board has no supply where it is isolated, or what feeds it is dead. */
    private boolean isDeadBoard(Optional<String> board) {
        return board.filter(id -> deadBoards.contains(id)
                        || index.board(id)
                                .filter(found ->
                                        Downstream.supplies(found).stream().anyMatch(this::isDeadPanel))
                                .isPresent())
                .isPresent();
    }

    /** The load that a board has its supply from, where it is one. */
    private Optional<Seat> feeding(Optional<String> board) {
        return board.flatMap(index::board).flatMap(Board::fedBy).map(seats::get);
    }

    private void wantsReady() {
        if (!notReady.isEmpty()) {
            breach(WorkKind.VOLTAGE_TOO_EARLY.about(
                    WorkKind.load(notReady.iterator().next())));
        }
    }

    /** Breakers go in and out of a dead panel, or of one whose maker allows it under load. */
    private void wantsDeadPanel(Seat seat, Optional<String> panel) {
        panel.filter(id -> !deadPanels.contains(id))
                .flatMap(index::panel)
                .filter(found -> found.withdrawableUnderLoad().isEmpty())
                .ifPresent(found -> breach(WorkKind.LIVE_PANEL.about(seat.subject(), WorkKind.panel(found.id()))));
    }

    /** Leads are moved on a dead board, or on one of extra-low voltage. */
    private void wantsDeadBoard(Seat seat, Optional<String> board) {
        board.filter(id -> !isDeadBoard(board))
                .flatMap(index::board)
                .filter(found -> found.outputVolts().orElse(Double.POSITIVE_INFINITY) >= Isolation.LIVE_VOLTS)
                .ifPresent(found -> breach(WorkKind.LIVE_BOARD.about(seat.subject(), WorkKind.board(found.id()))));
    }

    private void wantsSupply(Seat seat) {
        boolean isBoardOff = seat.load.switched()
                && (isDeadBoard(control(seat).board)
                        || feeding(control(seat).board).filter(it -> !it.isOn).isPresent());
        if (seat.hasSlot() && isDeadPanel(seat.panel) || isBoardOff) {
            breach(WorkKind.WITHOUT_SUPPLY.about(seat.subject()));
        }
    }

    /** A load goes off after whatever needs it. */
    private void off(Seat seat) {
        seat.isOn = false;
        seats.values().stream()
                .filter(other -> other.isOn
                        && other.load.switched()
                        && feeding(control(other).board).filter(seat::equals).isPresent())
                .forEach(other -> breach(WorkKind.ON_WITHOUT_BOARD_SUPPLY.about(other.subject(), seat.subject())));
        if (seat.load.switched()) {
            seats.values().stream()
                    .filter(other -> other.isOn && other.load.comesAfter().contains(seat.load.id()))
                    .forEach(other -> breach(WorkKind.ON_WITHOUT_EARLIER.about(other.subject(), seat.subject())));
            seats.values().stream()
                    .filter(other -> other.isOn && other != seat && control(other) == seat)
                    .forEach(other -> breach(WorkKind.ON_WITHOUT_CONTACTOR.about(other.subject(), seat.subject())));
        }
    }

    private void unlock(Seat seat) {
        if (!locked.remove(seat.load.id())) {
            breach(WorkKind.UNLOCKED_UNASKED.about(seat.subject()));
        }
        wantsReady();
        wantsPlace(seat);
    }

    /** Gear that is replaced is there by one of its names only. */
    private boolean isThere(Seat seat) {
        return seat.hasSlot()
                || !plant.gone().contains(seat.load.id()) && !plant.replacing().containsValue(seat.load.id());
    }

    private void wantsPlace(Seat seat) {
        Seat control = control(seat);
        if (seat.board.isPresent()
                && Optional.ofNullable(reached.get(seat.load.id()))
                        .filter(panel -> !panel.equals(seat.panel))
                        .isPresent()) {
            breach(WorkKind.LEAD_LEFT_BEHIND.about(seat.subject()));
        }
        if (!seat.hasSlot() || seat.load.switched() && (control.board.isEmpty() || control.output.isEmpty())) {
            breach(WorkKind.WITHOUT_PLACE.about(seat.subject()));
        }
    }

    /** A single load comes on while others are on. */
    private void on(Seat seat) {
        wantsPlace(seat);
        wantsSupply(seat);
        if (locked.contains(seat.load.id())) {
            breach(WorkKind.ON_WHILE_LOCKED_OUT.about(seat.subject()));
        }
        if (seat.load.switched()) {
            for (Seat other : seats.values()) {
                boolean later = other.load.switched()
                        && other.load.role().compareTo(seat.load.role()) > 0
                        && Commands.waitsFor(index.project(), other.load, seat.load);
                if (other.isOn && later) {
                    breach(WorkKind.ON_AFTER_LATER_ROLE.about(seat.subject(), other.subject()));
                }
                if (!other.isOn && isThere(other) && seat.load.comesAfter().contains(other.load.id())) {
                    breach(WorkKind.ON_BEFORE_EARLIER.about(seat.subject(), other.subject()));
                }
            }
        }
        Seat control = control(seat);
        if (!control.isOn && control != seat) {
            breach(WorkKind.ON_WITHOUT_CONTACTOR.about(seat.subject(), control.subject()));
        }
        seat.isOn = true;
        if (seat.hasSlot()) {
            wantsKnownCurrents(seat);
        }
        restart(seat);
    }

    /** What gear draws that nobody describes is in no figure, so that other lines are to wait until it is out. */
    private void wantsKnownCurrents(Seat seat) {
        Set<String> now = Lines.of(index, seat.load.id(), seat.panel, seat.slot);
        if (!now.equals(linesAsBuilt.get(seat.load.id()))) {
            plant.unknown().stream()
                    .map(seats::get)
                    .filter(Seat::hasSlot)
                    .findFirst()
                    .ifPresent(other -> breach(WorkKind.UNKNOWN_CURRENT.about(seat.subject(), other.subject())));
        }
    }

    private void restart(Seat seat) {
        if (limits.stream().allMatch(limit -> limit.inrushLimitAmps().isEmpty())) {
            return;
        }
        if (!RestartAlone.holds(seat.load.id(), Layout.of(index, plan(true)), limits)) {
            breach(WorkKind.OVER_BY_ITSELF.about(seat.subject()));
        }
    }

    private void systemOff(Optional<String> system) {
        seats.values().stream().filter(seat -> isFor(system, seat)).forEach(seat -> seat.isOn = false);
        system.ifPresent(this::wantsOffWhatNeeds);
    }

    /** One command is for all that boards switch, or for what is of its system. */
    private static boolean isFor(Optional<String> system, Seat seat) {
        return seat.load.switched() && (system.isEmpty() || seat.load.system().equals(system));
    }

    private void wantsOffWhatNeeds(String system) {
        seats.values().stream()
                .filter(seat -> seat.isOn && seat.load.switched() && Commands.needs(index.project(), seat.load, system))
                .forEach(seat ->
                        breach(WorkKind.ON_WITHOUT_NEEDED_SYSTEM.about(seat.subject(), WorkKind.system(system))));
    }

    private void systemOn(Optional<String> system) {
        system.ifPresent(this::wantsOffWhatNeeds);
        for (Seat seat : seats.values()) {
            if (isFor(system, seat) && control(seat).board.isPresent() && seat.hasSlot()) {
                if (locked.contains(seat.load.id())) {
                    breach(WorkKind.LOCKED_OUT_AT_COMMAND.about(seat.subject()));
                }
                wantsSupply(seat);
                wantsKnownCurrents(seat);
                seat.isOn = true;
            }
        }
    }

    private void moveBreaker(Seat seat, WorkStep next) {
        String panel = next.panel().orElseThrow();
        wantsLock(seat);
        wantsDeadPanel(seat, Optional.ofNullable(seat.panel));
        wantsDeadPanel(seat, next.panel().filter(to -> !to.equals(seat.panel)));
        moved(seat);
        int slot = next.slot().orElseThrow();
        Set<String> taken = slots(seat.load, panel, slot);
        if (taken.isEmpty()) {
            breach(WorkKind.DOES_NOT_FIT.inSlot(slot, seat.subject(), WorkKind.panel(panel)));
        }
        for (Seat other : seats.values()) {
            if (other != seat && other.hasSlot()) {
                Set<String> held = slots(other.load, other.panel, other.slot);
                held.retainAll(taken);
                if (!held.isEmpty()) {
                    breach(WorkKind.TAKEN_SLOT.inSlot(slot, seat.subject(), WorkKind.panel(panel), other.subject()));
                }
            }
        }
        if (spares.stream().anyMatch(spare -> !Collections.disjoint(spare.slots(index), taken))) {
            breach(WorkKind.SPARE_IN_SLOT.inSlot(slot, seat.subject(), WorkKind.panel(panel)));
        }
        if (seat.panel != null && !seat.panel.equals(panel)) {
            reached.putIfAbsent(seat.load.id(), seat.panel);
        }
        seat.panel = panel;
        seat.slot = slot;
    }

    private Set<String> slots(Load load, String panel, int slot) {
        Set<String> slots = new HashSet<>();
        index.panel(panel).ifPresent(found -> {
            for (int each : index.slotsOf(found).span(slot, load.poles())) {
                slots.add(panel + "\n" + each);
                if (isReserved(found, each)) {
                    breach(WorkKind.RESERVED_SLOT.inSlot(each, WorkKind.panel(panel)));
                }
            }
        });
        return slots;
    }

    private static boolean isReserved(Panel panel, int slot) {
        return panel.reservedSlots().contains(slot);
    }

    /** It stays where it is, and feeds nothing: what nobody states of it suits nobody. */
    private void leaveSpare(Seat seat) {
        wantsLock(seat);
        wantsDeadPanel(seat, Optional.ofNullable(seat.panel));
        removed(seat);
        boolean isKnown = !plant.unknown().contains(seat.load.id());
        spares.add(new SpareBreaker(
                seat.panel,
                seat.slot,
                seat.load.poles(),
                isKnown ? OptionalDouble.of(seat.load.breakerAmps()) : OptionalDouble.empty(),
                seat.load.curve(),
                isKnown && seat.load.switched() && seat.load.switchedBy() == SwitchedBy.BREAKER));
        seat.panel = null;
    }

    private void removeSpare(String panel, int slot) {
        index.panel(panel)
                .filter(found -> !deadPanels.contains(panel)
                        && found.withdrawableUnderLoad().isEmpty())
                .ifPresent(found -> breach(WorkKind.SPARE_OUT_OF_LIVE_PANEL.inSlot(slot, WorkKind.panel(panel))));
        if (!spares.removeIf(spare -> spare.isAt(panel, slot))) {
            breach(WorkKind.NO_SPARE.inSlot(slot, WorkKind.panel(panel)));
        }
    }

    private void useSpare(Seat seat, String panel, int slot) {
        if (!spares.removeIf(spare -> spare.isAt(panel, slot) && spare.suits(seat.load))) {
            breach(WorkKind.UNFIT_SPARE.inSlot(slot, seat.subject(), WorkKind.panel(panel)));
        }
    }

    private void moveLead(Seat seat, WorkStep next) {
        wantsLock(seat);
        wantsDeadBoard(seat, seat.board);
        wantsDeadBoard(seat, next.board().filter(to -> !seat.board.equals(next.board())));
        moved(seat);
        for (Seat other : seats.values()) {
            if (other != seat
                    && other.board.isPresent()
                    && other.board.equals(next.board())
                    && other.output.equals(next.output())) {
                breach(WorkKind.TAKEN_OUTPUT.about(seat.subject(), other.subject()));
            }
        }
        seat.board = next.board();
        seat.output = next.output();
        reached.remove(seat.load.id());
    }

    private Plan plan(boolean onlyWhatIsOn) {
        Map<String, Assignment> now = new LinkedHashMap<>();
        for (Seat seat : seats.values()) {
            if (seat.hasSlot() && (seat.isOn || !onlyWhatIsOn)) {
                now.put(
                        seat.load.id(),
                        Assignment.builder()
                                .load(seat.load.id())
                                .panel(seat.panel)
                                .slot(seat.slot)
                                .board(seat.board)
                                .output(seat.output)
                                .build());
            }
        }
        return PlanFinisher.timed(index.project(), times.in(Passage.bare(now, settings)));
    }

    private void endOfStage() {
        step = 0;
        seats.values().stream()
                .filter(seat -> seat.hasSlot() && !seat.isOn)
                .forEach(seat -> breach(WorkKind.STILL_OFF.about(seat.subject())));
        deadPanels.forEach(panel -> breach(WorkKind.PANEL_STILL_ISOLATED.about(WorkKind.panel(panel))));
        deadBoards.forEach(board -> breach(WorkKind.BOARD_STILL_ISOLATED.about(WorkKind.board(board))));
        untested.forEach(load -> breach(WorkKind.NOT_TRIED.about(WorkKind.load(load))));
        unlabelled.forEach(load -> breach(WorkKind.NOT_LABELLED.about(WorkKind.load(load))));
        Harm.of(Layout.of(index, plan(false)), plant::counts).worseThan(start).ifPresent(this::breach);
    }

    private void arrivedAt(Plan target) {
        seats.values().stream()
                .filter(seat -> plant.gone().contains(seat.load.id()))
                .filter(seat -> seat.hasSlot() || seat.board.isPresent())
                .forEach(seat -> breach(WorkKind.STILL_THERE.about(seat.subject())));
        Changes left = Changes.between(index, plan(false), target);
        left.loads().forEach(each -> breach(WorkKind.NOT_AS_PLANNED.about(WorkKind.load(each.load()))));
        left.settings().forEach(each -> breach(WorkKind.NOT_SET_AS_PLANNED.about(WorkKind.board(each.board()))));
        left.times().forEach(each -> breach(WorkKind.NOT_SET_AS_PLANNED.about(WorkKind.board(each.board()))));
    }
}
