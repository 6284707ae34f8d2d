package evenrise.model.event;

import evenrise.model.project.CounterCommand;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.LockRefuses;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OnInEmergency;
import evenrise.model.project.PhaseWatch;
import evenrise.model.project.Resume;
import evenrise.model.project.SequenceInEmergency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

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

    private final EventPlant plant;
    private final EventScript script;
    private final Contacts contacts;
    private final Diary diary;
    private final Wishes wishes;
    private final Sequencer sequencer;
    private final OrderWatch watch;
    private final List<Opening> openings = new ArrayList<>();
    private final double[] volts;
    /** Loads that an emergency took off and that have not come on since. */
    private final boolean[] outByEmergency;

    private boolean locked;
    private boolean isLow;
    private boolean isSteady = true;
    private int lowVersion;
    private int steadyVersion;
    private double releasedAt = Double.NEGATIVE_INFINITY;
    private Optional<ScriptEvent> kept = Optional.empty();
    private boolean wasQuiet = true;
    private double quietSince = Double.NEGATIVE_INFINITY;

    private Rehearsal(EventPlant plant, EventScript script, ContactTiming timing) {
        this.plant = plant;
        this.script = script;
        contacts = new Contacts(plant);
        diary = new Diary(plant, contacts);
        wishes = new Wishes(plant);
        sequencer = new Sequencer(plant, timing, contacts, diary);
        watch = new OrderWatch(plant, contacts, timing == ContactTiming.NOMINAL);
        outByEmergency = new boolean[plant.count()];
        volts = new double[plant.systemPhases.size()];
        Arrays.fill(volts, 100);
    }

    /** Plays {@code script} with breakers that close on time. */
    public static Trace of(EventPlant plant, EventScript script) {
        return of(plant, script, ContactTiming.NOMINAL);
    }

    /**
     * Plays {@code script}.
     *
     * @param script one whose references are the project's
     * @param timing when breakers really close; within the project's tolerance, if the bounds are to hold
     */
    public static Trace of(EventPlant plant, EventScript script, ContactTiming timing) {
        return new Rehearsal(plant, script, timing).play();
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
                atRest(now);
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
        atRest(now);
        return trace(now);
    }

    // ---- what happens by itself

    private boolean act(Agenda.Entry entry, double now) {
        switch (entry.kind()) {
            case TRIP -> {
                if (entry.version() == lowVersion && isLow && !wishes.tripped) {
                    trip(now);
                    return true;
                }
                return false;
            }
            case RESUME -> {
                if (entry.version() == steadyVersion && wishes.tripped && isSteady) {
                    open(now, "supply steady for " + Words.seconds(plant.behaviour.steadyWaitSeconds()));
                    wishes.tripped = false;
                    wishes.commandedOn &= plant.behaviour.onReturn() == Resume.SEQUENCE;
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
        open(now, "supply low for " + Words.seconds(plant.behaviour.brownoutHoldSeconds()));
        wishes.tripped = true;
        kept = Optional.empty();
        int opened = sequencer.dropNow(n -> true, this::canAct, now);
        diary.note(now, StepKind.TRIPS, Words.counted(opened, "load") + " opened in one go");
        waitForSteady(now);
    }

    private void waitForSteady(double now) {
        steadyVersion++;
        if (wishes.tripped && isSteady) {
            diary.note(
                    now,
                    StepKind.STEADY,
                    "supply steady: the sequence waits " + Words.seconds(plant.behaviour.steadyWaitSeconds()));
            sequencer
                    .agenda()
                    .add(
                            now + plant.behaviour.steadyWaitSeconds(),
                            Agenda.Kind.RESUME,
                            EventPlant.NONE,
                            steadyVersion,
                            0);
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
                open(now, event.text() + ", which had waited");
                obey(event, now);
            }
        }
        wasQuiet = sequencer.isQuiet();
    }

    // ---- what happens from outside

    private void happen(ScriptEvent event, double now) {
        Optional<String> refusal = refusal(event);
        if (refusal.isPresent()) {
            diary.note(now, StepKind.REFUSED, event.text() + ": " + refusal.get());
            return;
        }
        if (waits(event)) {
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
            case GROUP_ON -> groupOn(plant.group(event.group().orElseThrow()).orElseThrow());
            case GROUP_OFF ->
                wishes.groupOff[plant.group(event.group().orElseThrow()).orElseThrow()] = true;
            case EMERGENCY -> emergency(now);
            case RELEASE -> {
                if (wishes.emergency) {
                    wishes.emergency = false;
                    releasedAt = now;
                }
            }
            case MAINS -> mains(event, now);
            case BOARD_DEAD ->
                boardDies(plant.board(event.board().orElseThrow()).orElseThrow(), now);
            case BOARD_BACK ->
                wishes.boardDead[plant.board(event.board().orElseThrow()).orElseThrow()] = false;
            case MENDED -> load(event).ifPresent(sequencer::mend);
            default -> throw new IllegalStateException(event.toString());
        }
        follow(now);
    }

    private void groupOn(int group) {
        wishes.groupOff[group] = false;
        for (int n = 0; n < plant.count(); n++) {
            wishes.latched[n] &= plant.group[n] != group;
        }
    }

    private void emergency(double now) {
        if (wishes.emergency) {
            return;
        }
        wishes.emergency = true;
        if (plant.behaviour.onRelease() == Resume.STAY_OFF) {
            boolean stops = plant.behaviour.sequenceInEmergency() == SequenceInEmergency.STOP;
            for (int n = 0; n < plant.count(); n++) {
                wishes.latched[n] |= plant.drops[n] || stops && !sequencer.believedOn[n];
            }
        }
        for (int n = 0; n < plant.count(); n++) {
            outByEmergency[n] |= plant.drops[n] && contacts.isClosed(n);
        }
        sequencer.dropNow(n -> plant.drops[n], this::canAct, now);
    }

    private void boardDies(int board, double now) {
        if (wishes.boardDead[board]) {
            return;
        }
        if (plant.behaviour.deadContacts() == DeadContacts.OPEN) {
            sequencer.dropNow(n -> plant.board[n] == board, n -> true, now);
        }
        wishes.boardDead[board] = true;
        sequencer.lose(board, wishes, now);
    }

    private void mains(ScriptEvent event, double now) {
        for (int p = 0; p < volts.length; p++) {
            if (event.phases().isEmpty() || event.phases().contains(plant.systemPhases.get(p))) {
                volts[p] = event.voltagePercent().orElse(100);
            }
        }
        List<Integer> anew = contacts.energise(volts, now);
        if (!anew.isEmpty()) {
            returned(anew, now);
        }
        boolean wasLow = isLow;
        isLow = all(v -> v < plant.behaviour.brownoutPercent());
        boolean wasSteady = isSteady;
        isSteady = !all(v -> v < plant.behaviour.steadyFromPercent());
        if (isLow && !wasLow) {
            lowVersion++;
            sequencer
                    .agenda()
                    .add(now + plant.behaviour.brownoutHoldSeconds(), Agenda.Kind.TRIP, EventPlant.NONE, lowVersion, 0);
        }
        if (isSteady != wasSteady) {
            waitForSteady(now);
        }
    }

    private interface Level {
        boolean holds(double percent);
    }

    /** Whether it holds of the phases that are watched: of any, or of all. */
    private boolean all(Level level) {
        boolean any = plant.behaviour.phaseWatch() == PhaseWatch.ANY;
        for (double percent : volts) {
            if (level.holds(percent) == any) {
                return any;
            }
        }
        return !any;
    }

    private void returned(List<Integer> anew, double now) {
        List<Integer> switched = anew.stream().filter(n -> plant.switched[n]).toList();
        diary.note(
                now,
                StepKind.INRUSH,
                Words.counted(anew.size(), "load") + " draw" + (anew.size() == 1 ? "s its" : " their")
                        + " inrush anew, " + switched.size() + " of them switched");
        if (switched.isEmpty()) {
            return;
        }
        boolean hadTripped = wishes.tripped;
        long processing = switched.stream().filter(n -> plant.isProcessing[n]).count();
        boolean amplifiers = false;
        for (int n = 0; n < plant.count(); n++) {
            amplifiers |= plant.isAmplifier[n] && contacts.isClosed(n);
        }
        watch.add(
                now,
                hadTripped ? EventFinding.Grade.BROKEN : EventFinding.Grade.NOTE,
                hadTripped ? "return" : "ridden-through",
                "the voltage returns on " + Words.counted(switched.size(), "closed breaker") + " ("
                        + watch.named(switched) + "), which draw their inrush at once"
                        + (processing > 0 && amplifiers
                                ? "; " + processing + " of them processing, which starts anew behind live amplifiers"
                                : ""));
    }

    // ---- what is allowed

    private Optional<String> refusal(ScriptEvent event) {
        boolean isOn = event.event() == Happening.SYSTEM_ON || event.event() == Happening.GROUP_ON;
        boolean isOff = event.event() == Happening.SYSTEM_OFF || event.event() == Happening.GROUP_OFF;
        LockRefuses refuses = plant.behaviour.lockRefuses();
        if (locked && (isOn && refuses != LockRefuses.OFF_COMMANDS || isOff && refuses != LockRefuses.ON_COMMANDS)) {
            return Optional.of("the system is locked");
        }
        if (isOn && isLow) {
            return Optional.of("the supply is low");
        }
        if (isOn && wishes.emergency && plant.behaviour.onInEmergency() == OnInEmergency.REFUSE) {
            return Optional.of("the emergency contact is closed");
        }
        if (contradicts(event) && plant.behaviour.counterCommand() == CounterCommand.REFUSE) {
            return Optional.of("a sequence is under way");
        }
        return switch (event.event()) {
            case GROUP_ON -> groupOnRefusal(event);
            case GROUP_OFF -> groupOffRefusal(event);
            default -> Optional.empty();
        };
    }

    private boolean contradicts(ScriptEvent event) {
        return event.event() == Happening.SYSTEM_ON && sequencer.isGoingDown()
                || event.event() == Happening.SYSTEM_OFF && sequencer.isComingUp();
    }

    private boolean waits(ScriptEvent event) {
        return contradicts(event) && plant.behaviour.counterCommand() == CounterCommand.WAIT;
    }

    private Optional<String> groupOnRefusal(ScriptEvent event) {
        int group = plant.group(event.group().orElseThrow()).orElseThrow();
        if (!wishes.commandedOn) {
            return Optional.of("the system is off");
        }
        if (wishes.emergency && plant.groupDrops(group)) {
            return Optional.of("the group drops on an emergency, and the contact is closed");
        }
        boolean[] off = wishes.groupOff.clone();
        off[group] = false;
        return lost(wishes.commanded(off), group).map(id -> "load " + id + " needs a group that is off");
    }

    private Optional<String> groupOffRefusal(ScriptEvent event) {
        int group = plant.group(event.group().orElseThrow()).orElseThrow();
        if (!wishes.commandedOn) {
            return Optional.of("the system is off");
        }
        if (plant.behaviour.neededGroup() == NeededGroup.TAKE_ALONG) {
            return Optional.empty();
        }
        boolean[] before = wishes.commanded(wishes.groupOff);
        boolean[] off = wishes.groupOff.clone();
        off[group] = true;
        boolean[] after = wishes.commanded(off);
        List<Integer> along = new ArrayList<>();
        for (int n = 0; n < plant.count(); n++) {
            if (before[n] && !after[n] && plant.group[n] != group) {
                along.add(n);
            }
        }
        return along.isEmpty()
                ? Optional.empty()
                : Optional.of(watch.named(along) + (along.size() == 1 ? " needs it" : " need it"));
    }

    private Optional<String> lost(boolean[] wanted, int group) {
        for (int n = 0; n < plant.count(); n++) {
            if (plant.group[n] == group && !wanted[n]) {
                return Optional.of(plant.id(n));
            }
        }
        return Optional.empty();
    }

    // ---- what follows

    private void follow(double now) {
        wishes.settle(sequencer.believedOn);
        sequencer.follow(
                wishes,
                this::canAct,
                n -> canAct(n) && !wishes.chainIsDead(n),
                now,
                releasedAt + plant.behaviour.releaseWaitSeconds());
    }

    private boolean canAct(int load) {
        return plant.board[load] == EventPlant.NONE || !wishes.boardDead[plant.board[load]];
    }

    private Optional<Integer> load(ScriptEvent event) {
        return event.load().flatMap(plant::load);
    }

    private void open(double now, String text) {
        boolean fromRest = sequencer.isQuiet() && now - quietSince > 0;
        openings.add(new Opening(now, text, fromRest));
    }

    private Display shown() {
        if (wishes.emergency) {
            return Display.EMERGENCY;
        }
        if (isLow || wishes.tripped && !isSteady) {
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
        for (int n = 0; n < plant.count(); n++) {
            if (plant.switched[n] && !sequencer.believedOn[n]) {
                return Display.PARTLY_UP;
            }
        }
        return Display.UP;
    }

    /** Looks at what is on when no sequence is under way, before something else happens; says everything once. */
    private void atRest(double now) {
        if (sequencer.isQuiet()) {
            halfOn(now);
            standsWrong(now);
        }
    }

    /** Groups that are neither on nor off. */
    private void halfOn(double now) {
        for (int group = 0; group < plant.groups.size(); group++) {
            int on = 0;
            int all = 0;
            for (int n = 0; n < plant.count(); n++) {
                if (plant.group[n] == group) {
                    all++;
                    on += contacts.isClosed(n) ? 1 : 0;
                }
            }
            if (on > 0 && on < all) {
                watch.addOnce(
                        now,
                        EventFinding.Grade.NOTE,
                        "group-half-on",
                        "group " + plant.groups.get(group) + " is half on: " + on + " of "
                                + Words.counted(all, "load"));
            }
        }
    }

    /** Loads that are off though wanted, or on though not. */
    private void standsWrong(double now) {
        List<Integer> dead = new ArrayList<>();
        List<Integer> failed = new ArrayList<>();
        List<Integer> held = new ArrayList<>();
        List<Integer> stuck = new ArrayList<>();
        for (int n = 0; n < plant.count(); n++) {
            if (plant.switched[n] && contacts.isClosed(n) && !wishes.keep[n]) {
                stuck.add(n);
            } else if (wishes.keep[n] && !contacts.isClosed(n)) {
                boolean told = sequencer.believedOn[n];
                (wishes.chainIsDead(n) ? dead : told ? failed : held).add(n);
            }
        }
        say(now, dead, "stays-off", " off: the board, or one that starts it, is dead");
        say(now, failed, "stays-off", " off: the breaker did not close");
        say(now, held, "held-back", " off: what is needed is not on, or nothing may come on now");
        say(now, stuck, "stays-on", " on that should be off: isolate before touching anything");
    }

    private void say(double now, List<Integer> loads, String rule, String text) {
        if (!loads.isEmpty()) {
            String verb = loads.size() == 1 ? " is" : " are";
            EventFinding.Grade grade = rule.equals("stays-on") ? EventFinding.Grade.BROKEN : EventFinding.Grade.NOTE;
            watch.addOnce(
                    now,
                    grade,
                    rule,
                    Words.counted(loads.size(), "load") + " (" + watch.named(loads) + ")" + verb + text);
        }
    }

    private Trace trace(double now) {
        return new TraceWriter(plant, script.name(), diary.steps(), contacts, watch.found(), now)
                .trace(openings, shown(), locked);
    }
}
