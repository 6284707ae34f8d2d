package evenrise.model.event;

import evenrise.model.project.DeadContacts;
import evenrise.model.project.Resume;
import evenrise.model.project.SequenceInEmergency;
import java.util.ArrayList;
import java.util.Arrays;
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
    private double releasedAt = Double.NEGATIVE_INFINITY;
    private Optional<ScriptEvent> kept = Optional.empty();
    private boolean wasQuiet = true;
    private double quietSince = Double.NEGATIVE_INFINITY;

    private Rehearsal(ConnectedLoads connected, EventScript script, ContactTiming timing) {
        this.connected = connected;
        this.script = script;
        contacts = new Contacts(connected);
        diary = new Diary(connected, contacts);
        wishes = new Wishes(connected);
        sequencer = new Sequencer(connected, timing, contacts, diary);
        watch = new OrderWatch(connected, contacts, timing == ContactTiming.NOMINAL);
        outByEmergency = new boolean[connected.count()];
        supply = new SupplyWatch(connected, sequencer.agenda());
        refusals = new Refusals(connected, wishes, sequencer);
        atRest = new RestWatch(connected, contacts, wishes, sequencer, watch);
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
                if (decides) {
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
                if (supply.trips(entry) && !wishes.tripped) {
                    trip(now);
                    return true;
                }
                return false;
            }
            case RESUME -> {
                if (supply.resumes(entry) && wishes.tripped) {
                    open(now, "supply steady for " + Words.seconds(connected.behaviour.steadyWaitSeconds()));
                    wishes.tripped = false;
                    wishes.commandedOn &= connected.behaviour.onReturn() == Resume.SEQUENCE;
                    return true;
                }
                return false;
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

    private void trip(double now) {
        open(now, "supply low for " + Words.seconds(connected.behaviour.brownoutHoldSeconds()));
        wishes.tripped = true;
        latchMotors(n -> true, now);
        kept = Optional.empty();
        int opened = sequencer.dropNow(n -> true, this::canAct, now);
        diary.note(now, StepKind.TRIPS, Words.counted(opened, "load") + " opened in one go");
        waitForSteady(now);
    }

    private void waitForSteady(double now) {
        if (supply.waitForSteady(now)) {
            diary.note(
                    now,
                    StepKind.STEADY,
                    "supply steady: the sequence waits " + Words.seconds(connected.behaviour.steadyWaitSeconds()));
        }
    }

    /** Notes the end of a sequence, and obeys a command that waited for it. */
    private void through(double now) {
        if (sequencer.isQuiet() && !wasQuiet) {
            diary.note(now, StepKind.ENDS, Words.counted(contacts.loadsOn(), "load") + " on");
            quietSince = now;
            if (kept.isPresent()) {
                ScriptEvent event = kept.get();
                kept = Optional.empty();
                Optional<String> refusal = refusals.of(event, locked, supply.isLow());
                if (refusal.isPresent()) {
                    diary.note(now, StepKind.REFUSED, event.text() + ", which had waited: " + refusal.get());
                } else {
                    open(now, event.text() + ", which had waited");
                    obey(event, now);
                }
            }
        }
        wasQuiet = sequencer.isQuiet();
    }

    // ---- what happens from outside

    private void happen(ScriptEvent event, double now) {
        Optional<String> refusal = refusals.of(event, locked, supply.isLow());
        if (refusal.isPresent()) {
            diary.note(now, StepKind.REFUSED, event.text() + ": " + refusal.get());
            watch.addOnce(now, EventFinding.Grade.NOTE, "refused", event.text() + " is refused: " + refusal.get());
            return;
        }
        if (refusals.waits(event)) {
            kept = Optional.of(event);
            diary.note(now, StepKind.KEPT, event.text() + ": it waits until the sequence is through");
            return;
        }
        diary.note(now, StepKind.INPUT, event.text());
        switch (event.event()) {
            case LOCK -> locked = true;
            case UNLOCK -> locked = false;
            case STAYS_CLOSED, STAYS_OPEN ->
                load(event).ifPresent(n -> sequencer.fail(n, event.event() == Happening.STAYS_CLOSED));
            case LATE ->
                load(event).ifPresent(n -> sequencer.late(n, event.bySeconds().orElse(0)));
            case EARLY ->
                load(event).ifPresent(n -> sequencer.late(n, -event.bySeconds().orElse(0)));
            default -> {
                open(now, event.text());
                obey(event, now);
            }
        }
    }

    private void obey(ScriptEvent event, double now) {
        switch (event.event()) {
            case SYSTEM_ON -> {
                wishes.commandedOn = true;
                Arrays.fill(wishes.groupOff, false);
                Arrays.fill(wishes.latched, false);
            }
            case SYSTEM_OFF -> {
                wishes.commandedOn = false;
                kept = Optional.empty();
            }
            case GROUP_ON ->
                groupOn(connected.group(event.group().orElseThrow()).orElseThrow());
            case GROUP_OFF ->
                groupOff(connected.group(event.group().orElseThrow()).orElseThrow(), now);
            case EMERGENCY -> emergency(now);
            case RELEASE -> {
                if (wishes.emergency) {
                    wishes.emergency = false;
                    releasedAt = now;
                }
            }
            case MAINS -> mains(event, now);
            case BOARD_DEAD ->
                boardDies(connected.board(event.board().orElseThrow()).orElseThrow(), now);
            case BOARD_BACK ->
                wishes.boardDead[connected.board(event.board().orElseThrow()).orElseThrow()] = false;
            case MENDED -> load(event).ifPresent(sequencer::mend);
            default -> throw new IllegalStateException(event.toString());
        }
        follow(now);
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
        watch.addOnce(
                now,
                EventFinding.Grade.NOTE,
                "taken-along",
                "taking off group " + connected.groups.get(group) + " takes along "
                        + Words.counted(along.size(), "load") + " of other groups or of none (" + connected.named(along)
                        + "), which " + (along.size() == 1 ? "needs" : "need") + " what is in it"
                        + (silent == 0
                                ? ""
                                : "; " + Words.counted((int) silent, "amplifier") + " of them "
                                        + (silent == 1 ? "states" : "state")
                                        + " no needs_groups, so that all processing counts as needed"));
    }

    private void emergency(double now) {
        if (wishes.emergency) {
            return;
        }
        wishes.emergency = true;
        if (connected.behaviour.onRelease() == Resume.STAY_OFF) {
            boolean stops = connected.behaviour.sequenceInEmergency() == SequenceInEmergency.STOP;
            for (int n = 0; n < connected.count(); n++) {
                wishes.latched[n] |= connected.drops[n] || stops && !sequencer.believedOn[n];
            }
        }
        boolean waits = connected.behaviour.sequenceInEmergency() == SequenceInEmergency.STOP;
        latchMotors(n -> connected.switched[n] && (connected.drops[n] || waits && !sequencer.believedOn[n]), now);
        for (int n = 0; n < connected.count(); n++) {
            outByEmergency[n] |= connected.drops[n] && contacts.isClosed(n);
        }
        sequencer.dropNow(n -> connected.drops[n], this::canAct, now);
    }

    /** Motors that an event takes off, or keeps from coming on, stay off until somebody asks for them. */
    private void latchMotors(IntPredicate which, double now) {
        List<Integer> motors = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (connected.isMotor[n] && (wishes.commandedOn || !connected.switched[n]) && which.test(n)) {
                motors.add(n);
                wishes.latched[n] |= !connected.motorsReturn;
            }
        }
        if (!motors.isEmpty()) {
            watch.addOnce(now, EventFinding.Grade.NOTE, "motors", motorText(motors));
        }
    }

    private String motorText(List<Integer> motors) {
        String which = Words.counted(motors.size(), "motor") + " (" + connected.named(motors) + ")";
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

    private void mains(ScriptEvent event, double now) {
        double[] volts = supply.with(event.voltagePercent().orElse(100), event.phases());
        List<Integer> anew = contacts.energise(volts, now);
        if (!anew.isEmpty()) {
            returned(anew, now);
        }
        if (supply.change(volts, now) && wishes.tripped) {
            waitForSteady(now);
        }
    }

    private void returned(List<Integer> anew, double now) {
        List<Integer> switched =
                anew.stream().filter(n -> connected.switched[n]).toList();
        diary.note(
                now,
                StepKind.INRUSH,
                Words.counted(anew.size(), "load") + " draw" + (anew.size() == 1 ? "s its" : " their")
                        + " inrush anew, " + switched.size() + " of them switched");
        if (switched.isEmpty()) {
            return;
        }
        boolean hadTripped = wishes.tripped;
        long processing =
                switched.stream().filter(n -> connected.isProcessing[n]).count();
        boolean amplifiers = false;
        for (int n = 0; n < connected.count(); n++) {
            amplifiers |= connected.isAmplifier[n] && contacts.isClosed(n);
        }
        watch.add(
                now,
                hadTripped ? EventFinding.Grade.BROKEN : EventFinding.Grade.NOTE,
                hadTripped ? "return" : "ridden-through",
                "the voltage returns on " + Words.counted(switched.size(), "closed breaker") + " ("
                        + connected.named(switched) + "), which draw their inrush at once"
                        + (processing > 0 && amplifiers
                                ? "; " + processing + " of them processing, which starts anew behind live amplifiers"
                                : ""));
    }

    // ---- what follows

    private void follow(double now) {
        wishes.settle(sequencer.believedOn);
        sequencer.follow(
                wishes,
                this::canAct,
                n -> canAct(n) && !wishes.chainIsDead(n),
                now,
                releasedAt + connected.behaviour.releaseWaitSeconds());
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
        if (wishes.emergency) {
            return Display.EMERGENCY;
        }
        if (supply.isLow() || wishes.tripped && !supply.isSteady()) {
            return Display.SUPPLY_LOW;
        }
        if (wishes.tripped) {
            return Display.WAITING;
        }
        if (sequencer.isComingUp()) {
            return Display.COMING_UP;
        }
        if (sequencer.isGoingDown()) {
            return Display.GOING_DOWN;
        }
        if (!wishes.commandedOn) {
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
