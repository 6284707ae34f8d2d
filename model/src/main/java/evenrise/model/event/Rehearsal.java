package evenrise.model.event;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Resume;
import evenrise.model.project.SequenceInEmergency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Plays a script on a plan, from the system off and at rest on a steady supply until nothing more is to happen. A pure
 * function: the same plan, script and timing give the same trace. docs/events.md says what the control does and why.
 *
 * <p>At one instant the script comes first, in its order, then what was due. Time: happenings × loads, and for the
 * currents instants × (loads still drawing inrush + nodes).
 */
public final class Rehearsal {
    /** How long after all has come to rest a happening without a time takes place. */
    public static final double REST_SECONDS = 5;

    private static final double SAME_INSTANT = 1e-9;

    private final ConnectedLoads connected;
    private final EventScript script;
    private final Contacts contacts;
    private final Diary diary;
    private final Wishes wishes;
    private final Sequencer sequencer;
    private final OrderWatch watch;
    private final SupplyWatch supply;
    private final Refusals refusals;
    private final RestWatch atRest;
    private final List<Opening> openings = new ArrayList<>();
    /** Loads that an emergency took off and that have not come on since. */
    private final boolean[] outByEmergency;

    private boolean locked;
    private final double[] releasedAt;
    private final List<ScriptEvent> kept = new ArrayList<>();
    private final Mains mains;
    private final SourceEvents sources;
    private final boolean[] clockWasQuiet;
    private boolean wasQuiet = true;
    private double quietSince = Double.NEGATIVE_INFINITY;

    private Rehearsal(ConnectedLoads connected, EventScript script, ContactTiming timing) {
        this.connected = connected;
        this.script = script;
        mains = new Mains(connected);
        contacts = new Contacts(connected, mains.grid());
        diary = new Diary(connected, contacts);
        sequencer = new Sequencer(connected, timing, contacts, diary);
        supply = new SupplyWatch(connected, sequencer.agenda());
        wishes = new Wishes(connected, supply);
        watch = new OrderWatch(connected, contacts, timing == ContactTiming.NOMINAL);
        outByEmergency = new boolean[connected.count()];
        refusals = new Refusals(connected, wishes, sequencer);
        atRest = new RestWatch(connected, contacts, wishes, sequencer, watch);
        sources = new SourceEvents(connected, mains, contacts, supply, watch, diary);
        releasedAt = new double[connected.clocks];
        Arrays.fill(releasedAt, Double.NEGATIVE_INFINITY);
        clockWasQuiet = new boolean[connected.clocks];
        Arrays.fill(clockWasQuiet, true);
    }

    /** Plays {@code script} with breakers that close on time. */
    public static Trace of(ConnectedLoads connected, EventScript script) {
        return of(connected, script, ContactTiming.NOMINAL);
    }

    /**
     * Plays {@code script}.
     *
     * @param script one whose references are the project's
     * @param timing when breakers really close; within the project's tolerance, if the bounds are to hold
     */
    public static Trace of(ConnectedLoads connected, EventScript script, ContactTiming timing) {
        return new Rehearsal(connected, script, timing).play();
    }

    private Trace play() {
        double now = 0;
        int next = 0;
        Agenda agenda = sequencer.agenda();
        while (next < script.events().size() || !agenda.isEmpty()) {
            double due = agenda.nextSeconds();
            double input = Double.POSITIVE_INFINITY;
            if (next < script.events().size()) {
                ScriptEvent event = script.events().get(next);
                input = event.atSeconds().isPresent()
                        ? Math.max(now, event.atSeconds().getAsDouble())
                        : agenda.isEmpty() ? (next == 0 ? 0 : now + REST_SECONDS) : Double.POSITIVE_INFINITY;
            }
            now = Math.max(now, Math.min(due, input));
            watch.reached(now);
            if (input <= due + SAME_INSTANT) {
                atRest.lookWhenQuiet(now);
                happen(script.events().get(next++), now);
            } else {
                boolean decides = false;
                while (agenda.nextSeconds() <= now + SAME_INSTANT) {
                    decides |= act(agenda.take(), now);
                }
                if (decides || turnsCome(now)) {
                    follow(now);
                }
            }
            through(now);
            watch.look(now, wishes.emergency, outByEmergency);
            diary.stamp(shown(), locked);
        }
        watch.reached(Double.POSITIVE_INFINITY);
        atRest.lookWhenQuiet(now);
        return trace(now);
    }

    // ---- what happens by itself

    private boolean act(Agenda.Entry entry, double now) {
        switch (entry.kind()) {
            case TRIP -> {
                int[] low = supply.trips(entry);
                if (low.length > 0) {
                    trip(low, now);
                }
                return low.length > 0;
            }
            case RESUME -> {
                int[] steady = supply.resumes(entry);
                if (steady.length > 0) {
                    resume(steady, now);
                }
                return steady.length > 0;
            }
            case TRANSFERRED -> {
                int point = entry.load();
                open(now, connected.pointName(point) + " is on " + sources.arrives(point));
                energised(now);
                return true;
            }
            default -> {
                boolean wasClosed = contacts.isClosed(entry.load());
                sequencer.act(entry, now);
                if (!wasClosed && contacts.isClosed(entry.load())) {
                    outByEmergency[entry.load()] = false;
                    watch.closed(entry.load(), now);
                }
                return false;
            }
        }
    }

    private void trip(int[] low, double now) {
        open(
                now,
                "supply low" + supply.where(low) + " for "
                        + THOUSANDTHS.seconds(connected.behaviour.brownoutHoldSeconds()));
        supply.trip(low, true);
        latchMotors(n -> connected.switched[n] ? supply.isTripped(connected.watch(n)) : sources.isLow(n, low), now);
        kept.removeIf(event -> connected.clocksOf(event).stream()
                .flatMapToInt(c -> Arrays.stream(connected.watchesOf(c)))
                .anyMatch(supply::isTripped));
        int opened = sequencer.dropNow(n -> isOf(low, n), this::canAct, now);
        if (low.length < supply.count()) {
            for (int board = 0; board < connected.boards.size(); board++) {
                if (contains(low, connected.watchOf[board])) {
                    sequencer.lose(board, wishes, now);
                }
            }
        }
        diary.note(now, EntryKind.TRIPS, Phrase.counted(opened, "load") + " opened in one go");
        waitForSteady(low, now);
    }

    private void resume(int[] steady, double now) {
        open(
                now,
                "supply steady" + supply.where(steady) + " for "
                        + THOUSANDTHS.seconds(connected.behaviour.steadyWaitSeconds()));
        supply.trip(steady, false);
        if (connected.behaviour.onReturn() == Resume.SEQUENCE) {
            return;
        }
        for (int c = 0; c < connected.clocks; c++) {
            boolean all = Arrays.stream(connected.watchesOf(c)).allMatch(each -> contains(steady, each));
            wishes.commandedOn[c] &= !all;
        }
        for (int n = 0; n < connected.count(); n++) {
            wishes.latched[n] |= wishes.commandedOn[connected.clock[n]] && connected.switched[n] && isOf(steady, n);
        }
    }

    private boolean isOf(int[] watches, int load) {
        return contains(watches, connected.watch(load));
    }

    private static boolean contains(int[] some, int one) {
        return Arrays.stream(some).anyMatch(each -> each == one);
    }

    private void waitForSteady(int[] watches, double now) {
        int[] steady = supply.waitForSteady(watches, now);
        if (steady.length > 0) {
            diary.note(
                    now,
                    EntryKind.STEADY,
                    "supply steady" + supply.where(steady) + ": the sequence waits "
                            + THOUSANDTHS.seconds(connected.behaviour.steadyWaitSeconds()));
        }
    }

    /** Whether a system's sequence has come to its end, so that one that waited for it may begin. */
    private boolean turnsCome(double now) {
        boolean come = false;
        for (int c = 0; connected.hasClocks && c < connected.clocks; c++) {
            boolean isQuiet = sequencer.isQuiet(c);
            if (isQuiet && !clockWasQuiet[c]) {
                come = true;
                diary.note(now, EntryKind.ENDS, connected.clockName(c) + Phrase.counted(on(c), "load") + " on");
            }
            clockWasQuiet[c] = isQuiet;
        }
        return come;
    }

    private int on(int clock) {
        int on = 0;
        for (int n = 0; n < connected.count(); n++) {
            on += connected.switched[n] && connected.clock[n] == clock && contacts.isClosed(n) ? 1 : 0;
        }
        return on;
    }

    /** Notes the end of a sequence, and obeys a command that waited for it. */
    private void through(double now) {
        if (sequencer.isQuiet() && !wasQuiet) {
            if (!connected.hasClocks) {
                diary.note(now, EntryKind.ENDS, Phrase.counted(contacts.loadsOn(), "load") + " on");
            }
            quietSince = now;
        }
        for (ScriptEvent event : List.copyOf(kept)) {
            if (connected.clocksOf(event).stream().allMatch(sequencer::isQuiet) && kept.remove(event)) {
                Optional<String> refusal = refusals.of(event, locked, supply);
                if (refusal.isPresent()) {
                    diary.note(now, EntryKind.REFUSED, event.text() + ", which had waited: " + refusal.get());
                } else {
                    open(now, event.text() + ", which had waited");
                    obey(event, now);
                }
            }
        }
        turnsCome(now);
        wasQuiet = sequencer.isQuiet();
    }

    // ---- what happens from outside

    private void happen(ScriptEvent event, double now) {
        boolean isOn = event.event() == Happening.SYSTEM_ON;
        boolean isOff = event.event() == Happening.SYSTEM_OFF;
        if (connected.hasClocks && event.system().isEmpty() && (isOn || isOff)) {
            List<String> systems = new ArrayList<>(connected.systems);
            if (isOff) {
                Collections.reverse(systems);
            }
            systems.forEach(each -> happenOnce(event.withSystem(each), now));
        } else {
            happenOnce(event, now);
        }
    }

    private void happenOnce(ScriptEvent event, double now) {
        Optional<String> refusal = refusals.of(event, locked, supply);
        if (refusal.isPresent()) {
            diary.note(now, EntryKind.REFUSED, event.text() + ": " + refusal.get());
            watch.addOnce(EventFinding.note(now, "refused")
                    .kind("refused")
                    .text(event.text() + " is refused: " + refusal.get())
                    .build());
            return;
        }
        if (refusals.waits(event)) {
            kept.removeIf(each -> connected.clocksOf(each).equals(connected.clocksOf(event)));
            kept.add(event);
            diary.note(now, EntryKind.KEPT, event.text() + ": it waits until the sequence is through");
            return;
        }
        diary.note(now, EntryKind.INPUT, event.text());
        switch (event.event()) {
            case LOCK -> locked = true;
            case UNLOCK -> locked = false;
            case STAYS_CLOSED, STAYS_OPEN ->
                load(event).ifPresent(n -> sequencer.fail(n, event.event() == Happening.STAYS_CLOSED));
            case LATE ->
                load(event).ifPresent(n -> sequencer.late(n, event.bySeconds().orElse(0)));
            case EARLY ->
                load(event).ifPresent(n -> sequencer.late(n, -event.bySeconds().orElse(0)));
            case NEUTRAL_LOST -> sources.neutralLost(event, now);
            default -> {
                open(now, event.text());
                obey(event, now);
            }
        }
    }

    private void obey(ScriptEvent event, double now) {
        switch (event.event()) {
            case SYSTEM_ON -> {
                connected.clocksOf(event).forEach(this::commandOn);
            }
            case SYSTEM_OFF -> commandOff(event, now);
            case GROUP_ON ->
                groupOn(connected.group(event.group().orElseThrow()).orElseThrow());
            case GROUP_OFF ->
                groupOff(connected.group(event.group().orElseThrow()).orElseThrow(), now);
            case EMERGENCY -> connected.systemsOf(event).forEach(system -> emergency(system, now));
            case RELEASE -> {
                for (int system : connected.systemsOf(event)) {
                    if (wishes.emergency[system]) {
                        wishes.emergency[system] = false;
                        releasedAt[connected.hasClocks ? system : 0] = now;
                    }
                }
            }
            case MAINS, TRIP, RESET, TRANSFER, TRANSFER_BACK -> {
                sources.obey(event, now, sequencer.agenda());
                energised(now);
            }
            case BOARD_DEAD ->
                boardDies(connected.board(event.board().orElseThrow()).orElseThrow(), now);
            case BOARD_BACK ->
                wishes.boardDead[connected.board(event.board().orElseThrow()).orElseThrow()] = false;
            case MENDED -> load(event).ifPresent(sequencer::mend);
            default -> throw new IllegalStateException(event.toString());
        }
        follow(now);
        for (int c : connected.clocksOf(event)) {
            boolean isOn = event.event() == Happening.SYSTEM_ON;
            if (isOn && sequencer.hasToWait(c, wishes, this::canAct, this::canRise)) {
                diary.note(now, EntryKind.KEPT, connected.clockName(c) + "it waits for another system to be through");
            }
        }
    }

    private void commandOn(int clock) {
        wishes.commandedOn[clock] = true;
        for (int group = 0; group < wishes.groupOff.length; group++) {
            wishes.groupOff[group] &= connected.hasClocks && connected.systemOf(group) != clock;
        }
        for (int n = 0; n < connected.count(); n++) {
            wishes.latched[n] &= connected.clock[n] != clock;
        }
    }

    /** What needs the system goes off with it, and before it. */
    private void commandOff(ScriptEvent event, double now) {
        List<Integer> scope = connected.clocksOf(event);
        List<Integer> along = refusals.needing(scope);
        along.forEach(c -> wishes.commandedOn[c] = false);
        scope.forEach(c -> wishes.commandedOn[c] = false);
        kept.removeIf(each -> scope.containsAll(connected.clocksOf(each)));
        if (!along.isEmpty()) {
            List<String> systems = along.stream().map(connected.systems::get).toList();
            watch.addOnce(EventFinding.note(now, "taken-along")
                    .kind("systems")
                    .subjects(systems.stream()
                            .map(id -> new Subject(SubjectKind.SYSTEM, id))
                            .toList())
                    .text(event.text() + " takes along " + String.join(", ", systems) + ", which needs it")
                    .build());
        }
    }

    private void groupOn(int group) {
        wishes.groupOff[group] = false;
        for (int n = 0; n < connected.count(); n++) {
            wishes.latched[n] &= connected.group[n] != group;
        }
    }

    private void groupOff(int group, double now) {
        boolean[] before = wishes.commanded(wishes.groupOff);
        wishes.groupOff[group] = true;
        List<Integer> along = wishes.lost(before, wishes.commanded(wishes.groupOff), group);
        if (along.isEmpty()) {
            return;
        }
        long silent = along.stream()
                .filter(n -> connected.isAmplifier[n]
                        && connected.loads.get(n).load().needsGroups().isEmpty())
                .count();
        watch.addOnce(EventFinding.note(now, "taken-along")
                .kind("loads")
                .subjects(connected.subjects(along, List.of()))
                .text("taking off group " + connected.groups.get(group) + " takes along "
                        + Phrase.counted(along.size(), "load") + " of other groups or of none ("
                        + connected.named(along)
                        + "), which " + (along.size() == 1 ? "needs" : "need") + " what is in it"
                        + (silent == 0
                                ? ""
                                : "; " + Phrase.counted((int) silent, "amplifier") + " of them "
                                        + (silent == 1 ? "states" : "state")
                                        + " no needs_groups, so that all processing counts as needed"))
                .build());
    }

    private void emergency(int system, double now) {
        if (wishes.emergency[system]) {
            return;
        }
        wishes.emergency[system] = true;
        boolean stops = connected.behaviour.sequenceInEmergency() == SequenceInEmergency.STOP;
        IntPredicate isOwn = n -> connected.system[n] == system;
        if (connected.behaviour.onRelease() == Resume.STAY_OFF) {
            for (int n = 0; n < connected.count(); n++) {
                wishes.latched[n] |= isOwn.test(n) && (connected.drops[n] || stops && !sequencer.believedOn[n]);
            }
        }
        latchMotors(
                n -> isOwn.test(n)
                        && connected.switched[n]
                        && (connected.drops[n] || stops && !sequencer.believedOn[n]),
                now);
        for (int n = 0; n < connected.count(); n++) {
            outByEmergency[n] |= isOwn.test(n) && connected.drops[n] && contacts.isClosed(n);
        }
        coolingLost(isOwn, now);
        sequencer.dropNow(n -> isOwn.test(n) && connected.drops[n], this::canAct, now);
    }

    /** An emergency knows no off delays. */
    private void coolingLost(IntPredicate isOwn, double now) {
        List<Integer> cut = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (isOwn.test(n) && connected.drops[n] && connected.offAfter[n] > 0 && contacts.isClosed(n)) {
                cut.add(n);
            }
        }
        if (!cut.isEmpty()) {
            watch.addOnce(EventFinding.note(now, "off-delay")
                    .kind("cut-short")
                    .subjects(connected.subjects(cut, List.of()))
                    .text(connected.named(cut) + (cut.size() == 1 ? " goes" : " go")
                            + " off at once, though off_after_s asks for time to cool or shut down")
                    .build());
        }
    }

    /** Motors that an event takes off, or keeps from coming on, stay off until somebody asks for them. */
    private void latchMotors(IntPredicate which, double now) {
        List<Integer> motors = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (connected.isMotor[n]
                    && (wishes.commandedOn[connected.clock[n]] || !connected.switched[n])
                    && which.test(n)) {
                motors.add(n);
                wishes.latched[n] |= !connected.motorsReturn;
            }
        }
        if (!motors.isEmpty()) {
            watch.addOnce(EventFinding.note(now, "motors")
                    .kind(connected.motorsReturn ? "come-back" : "stay-off")
                    .subjects(connected.subjects(motors, List.of()))
                    .text(motorText(motors))
                    .build());
        }
    }

    private String motorText(List<Integer> motors) {
        String which = Phrase.counted(motors.size(), "motor") + " (" + connected.named(motors) + ")";
        boolean isOne = motors.size() == 1;
        return connected.motorsReturn
                ? which + (isOne ? " comes" : " come") + " back in the sequence without that anybody asks"
                : which + (isOne ? " stays" : " stay") + " off until somebody asks for " + (isOne ? "it" : "them")
                        + ": a requirement on the control, to be tested";
    }

    private void boardDies(int board, double now) {
        if (wishes.boardDead[board]) {
            return;
        }
        if (connected.behaviour.deadContacts() == DeadContacts.OPEN) {
            sequencer.dropNow(n -> connected.board[n] == board, n -> true, now);
        }
        wishes.boardDead[board] = true;
        sequencer.lose(board, wishes, now);
    }

    /** Voltages or what feeds what have changed. */
    private void energised(double now) {
        int[] turned = sources.energise(now);
        if (turned.length > 0) {
            waitForSteady(turned, now);
        }
    }

    // ---- what follows

    private void follow(double now) {
        wishes.settle(sequencer.believedOn);
        double[] earliest = new double[connected.clocks];
        Arrays.setAll(earliest, c -> releasedAt[c] + connected.behaviour.releaseWaitSeconds());
        sequencer.follow(wishes, this::canAct, this::canRise, now, earliest);
    }

    private boolean canRise(int load) {
        return canAct(load) && !wishes.chainIsDead(load);
    }

    private boolean canAct(int load) {
        return connected.board[load] == ConnectedLoads.NONE || !wishes.boardDead[connected.board[load]];
    }

    private Optional<Integer> load(ScriptEvent event) {
        return event.load().flatMap(connected::load);
    }

    private void open(double now, String text) {
        boolean fromRest = sequencer.isQuiet() && now - quietSince > 0;
        if (fromRest) {
            contacts.use(now);
        }
        openings.add(new Opening(now, text, fromRest));
    }

    private Display shown() {
        if (wishes.anyEmergency()) {
            return Display.EMERGENCY;
        }
        if (supply.isLow() || supply.isUnsteady()) {
            return Display.SUPPLY_LOW;
        }
        if (supply.hasTripped()) {
            return Display.WAITING;
        }
        if (sequencer.isComingUp()) {
            return Display.COMING_UP;
        }
        if (sequencer.isGoingDown()) {
            return Display.GOING_DOWN;
        }
        if (!wishes.anyCommandedOn()) {
            return sequencer.believesAnyOn() ? Display.NOT_CLEAR : Display.DOWN;
        }
        for (int n = 0; n < connected.count(); n++) {
            if (connected.switched[n] && !sequencer.believedOn[n]) {
                return Display.PARTLY_UP;
            }
        }
        return Display.UP;
    }

    private Trace trace(double now) {
        return new TraceWriter(connected, script.name(), diary.steps(), contacts, watch.found(), now)
                .trace(openings, shown(), locked);
    }
}
