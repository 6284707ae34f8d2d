package evenrise.model.event;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Restart;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.IntPredicate;

/**
 * Runs sequences: tells breakers to close and to open at the times of the plan, counted from the begin of a run. A run up
 * goes through all of the sequence from its start; what is on already stays on. A run down mirrors it: of what is to go
 * off, what comes on last goes first. Systems with commands of their own have runs of their own. The control believes what it told; a breaker that fails does not report back.
 */
final class Sequencer {
    private final ConnectedLoads connected;
    private final ContactTiming timing;
    private final Contacts contacts;
    private final Agenda agenda = new Agenda();
    private final Diary diary;

    final boolean[] believedOn;
    private final boolean[] isToClose;
    private final boolean[] isToOpen;
    private final int[] version;
    private final int[] closings;
    private final boolean[] staysClosed;
    private final boolean[] staysOpen;
    private final double[] lateSeconds;
    /** Nominal instant of each load's latest switch-on. */
    private final double[] onSince;
    /** By command. */
    private final double[] upBeganSeconds;

    private final double[] upToldSeconds;
    private final int[] toCloseOf;
    private final int[] toOpenOf;
    private int toClose;
    private int toOpen;

    Sequencer(ConnectedLoads connected, ContactTiming timing, Contacts contacts, Diary diary) {
        this.connected = connected;
        this.timing = timing;
        this.contacts = contacts;
        this.diary = diary;
        int count = connected.count();
        believedOn = new boolean[count];
        isToClose = new boolean[count];
        isToOpen = new boolean[count];
        version = new int[count];
        closings = new int[count];
        staysClosed = new boolean[count];
        staysOpen = new boolean[count];
        lateSeconds = new double[count];
        onSince = new double[count];
        upBeganSeconds = new double[connected.clocks];
        Arrays.fill(upBeganSeconds, Double.NEGATIVE_INFINITY);
        upToldSeconds = new double[connected.clocks];
        toCloseOf = new int[connected.clocks];
        toOpenOf = new int[connected.clocks];
    }

    Agenda agenda() {
        return agenda;
    }

    boolean isComingUp() {
        return toClose > 0;
    }

    boolean isGoingDown() {
        return toOpen > 0;
    }

    boolean isComingUp(int clock) {
        return toCloseOf[clock] > 0;
    }

    boolean isGoingDown(int clock) {
        return toOpenOf[clock] > 0;
    }

    boolean isQuiet(int clock) {
        return toCloseOf[clock] == 0 && toOpenOf[clock] == 0;
    }

    private void willClose(int load, boolean will) {
        isToClose[load] = will;
        toClose += will ? 1 : -1;
        toCloseOf[connected.clock[load]] += will ? 1 : -1;
    }

    private void willOpen(int load, boolean will) {
        isToOpen[load] = will;
        toOpen += will ? 1 : -1;
        toOpenOf[connected.clock[load]] += will ? 1 : -1;
    }

    /** Whether the load's breaker, or the contactor that it is behind, does not close when it is told. */
    boolean staysOpen(int load) {
        return staysOpen[connected.actuator[load]];
    }

    void fail(int load, boolean closed) {
        (closed ? staysClosed : staysOpen)[load] = true;
    }

    void late(int load, double seconds) {
        lateSeconds[load] = seconds;
    }

    /** The breaker does again what it is told, and its board knows where it stands. */
    void mend(int load) {
        staysClosed[load] = false;
        staysOpen[load] = false;
        lateSeconds[load] = 0;
        for (int n = 0; n < connected.count(); n++) {
            if (connected.actuator[n] == load && !isToClose[n] && !isToOpen[n]) {
                believedOn[n] = contacts.isClosed(n);
            }
        }
    }

    /**
     * Follows new wishes: calls off what is no longer wanted, and begins a run where something new is.
     *
     * @param canAct whether the load's board can tell its breaker anything
     * @param canRise whether its board comes to its turn in a run up
     * @param earliestSeconds when a run up of each command may begin
     */
    void follow(Wishes wishes, IntPredicate canAct, IntPredicate canRise, double now, double[] earliestSeconds) {
        boolean[] newDown = new boolean[connected.clocks];
        boolean[] newUp = new boolean[connected.clocks];
        for (int n = 0; n < connected.count(); n++) {
            if (isToOpen[n] && wishes.keep[n]) {
                callOffOpening(n);
            }
            if (isToClose[n] && !wishes.rise[n]) {
                callOffClosing(n);
            }
            newDown[connected.clock[n]] |= believedOn[n] && !wishes.keep[n] && !isToOpen[n] && canAct.test(n);
            newUp[connected.clock[n]] |= !believedOn[n] && wishes.rise[n] && !isToClose[n] && canRise.test(n);
        }
        Turns turns = new Turns(connected, this, wishes, canAct, canRise);
        for (int c = connected.clocks - 1; c >= 0; c--) { // what needs others goes before them
            if (newDown[c] && turns.mayGoDown(c)) {
                runDown(c, wishes, canAct, now);
            }
        }
        for (int c = 0; c < connected.clocks; c++) {
            if (newUp[c] && turns.mayComeUp(c)) {
                runUp(
                        c,
                        wishes,
                        canRise,
                        Math.max(now, Math.max(earliestSeconds[c], turns.earliestSeconds(c, onSince))));
            }
        }
    }

    /** Whether a command has to wait for that of another system before it can be followed. */
    boolean hasToWait(int clock, Wishes wishes, IntPredicate canAct, IntPredicate canRise) {
        boolean isWanted = false;
        for (int n = 0; n < connected.count(); n++) {
            isWanted |=
                    connected.clock[n] == clock && !believedOn[n] && wishes.rise[n] && !isToClose[n] && canRise.test(n);
        }
        return isWanted && !new Turns(connected, this, wishes, canAct, canRise).mayComeUp(clock);
    }

    private void runDown(int clock, Wishes wishes, IntPredicate canAct, double now) {
        double last = Double.NEGATIVE_INFINITY;
        IntPredicate goes = n -> connected.clock[n] == clock && believedOn[n] && !wishes.keep[n] && canAct.test(n);
        for (int n = 0; n < connected.count(); n++) {
            if (goes.test(n)) {
                last = Math.max(last, connected.on[n]);
            }
        }
        double lastOff = 0;
        for (int n = 0; n < connected.count(); n++) {
            if (goes.test(n)) {
                callOffOpening(n);
                willOpen(n, true);
                double due = now + last - connected.on[n] + connected.offAfter[n];
                agenda.add(due, Agenda.Kind.OPEN, n, ++version[n], 0);
                lastOff = Math.max(lastOff, last - connected.on[n] + connected.offAfter[n]);
            }
        }
        diary.note(
                now,
                EntryKind.GOES_DOWN,
                connected.clockName(clock) + Phrase.counted(toOpenOf[clock], "load")
                        + " to go off in reverse, the last after " + THOUSANDTHS.seconds(lastOff));
    }

    private void runUp(int clock, Wishes wishes, IntPredicate canRise, double told) {
        IntPredicate comes = n -> connected.clock[n] == clock && !believedOn[n] && wishes.rise[n] && canRise.test(n);
        upBeganSeconds[clock] = beginSeconds(clock, comes, told);
        upToldSeconds[clock] = told;
        Map<Integer, Double> offsets = new HashMap<>();
        for (int n = 0; n < connected.count(); n++) {
            if (comes.test(n)) {
                callOffClosing(n);
                willClose(n, true);
                int by = connected.actuator[n];
                double nominal = upBeganSeconds[clock] + connected.on[n];
                double due = nominal + lateSeconds[by];
                int closing = closings[n]++;
                double offset = offsets.computeIfAbsent(by, any -> timing.offsetSeconds(connected.id(by), closing));
                double real = Math.max(told, due + offset);
                version[n]++;
                agenda.add(nominal, Agenda.Kind.NOMINAL, n, version[n], nominal);
                agenda.add(real, Agenda.Kind.CLOSE, n, version[n], due);
            }
        }
        double passed = told - upBeganSeconds[clock];
        diary.note(
                told,
                EntryKind.BEGINS,
                connected.clockName(clock) + Phrase.counted(toCloseOf[clock], "load")
                        + " to come on, the last after "
                        + THOUSANDTHS.seconds(latestOn(clock) - passed)
                        + (passed > 0 ? "; " + THOUSANDTHS.seconds(passed) + " of the sequence are passed over" : ""));
    }

    /**
     * When the sequence counts from. Where it begins at the first missing load, it never counts from before the run before:
     * so whatever is on has been on for as long as in the plan, and order and settling hold.
     */
    private double beginSeconds(int clock, IntPredicate comes, double told) {
        if (connected.behaviour.restart() == Restart.WHOLE) {
            return told;
        }
        double first = Double.POSITIVE_INFINITY;
        for (int n = 0; n < connected.count(); n++) {
            first = comes.test(n) ? Math.min(first, connected.on[n]) : first;
        }
        return Math.max(told - first, upBeganSeconds[clock]);
    }

    private double latestOn(int clock) {
        double latest = 0;
        for (int n = 0; n < isToClose.length; n++) {
            latest = isToClose[n] && connected.clock[n] == clock ? Math.max(latest, connected.on[n]) : latest;
        }
        return latest;
    }

    private void callOffOpening(int load) {
        if (isToOpen[load]) {
            willOpen(load, false);
            version[load]++;
        }
    }

    private void callOffClosing(int load) {
        if (isToClose[load]) {
            willClose(load, false);
            version[load]++;
            believedOn[load] = contacts.isClosed(load); // one that has closed early is told to open like any other
        }
    }

    /** A board dies: its own loads are left as they are, and boards that wait for it do not begin. */
    void lose(int board, Wishes wishes, double now) {
        for (int n = 0; n < connected.count(); n++) {
            if (connected.board[n] == ConnectedLoads.NONE) {
                continue;
            }
            boolean own = connected.board[n] == board;
            boolean waits = wishes.follows(connected.board[n], board)
                    && upBeganSeconds[connected.clock[n]] + connected.boardBegin[connected.board[n]] > now + 1e-9;
            if (own || waits) {
                callOffClosing(n);
            }
            if (own) {
                callOffOpening(n);
            }
        }
    }

    /** Opens these loads' breakers at once, whatever was to come. */
    int dropNow(IntPredicate which, IntPredicate canAct, double now) {
        int opened = 0;
        for (int n = 0; n < connected.count(); n++) {
            if (!connected.switched[n] || !which.test(n)) {
                continue;
            }
            callOffClosing(n);
            callOffOpening(n);
            version[n]++; // a late breaker that was still to close is told otherwise
            if (!canAct.test(n)) {
                if (contacts.isClosed(n)) {
                    diary.fails(now, n, "its board is dead: it stays closed");
                }
                continue;
            }
            believedOn[n] = false;
            opened += open(n, now) ? 1 : 0;
        }
        return opened;
    }

    private boolean open(int load, double now) {
        if (!contacts.isClosed(load)) {
            return false;
        }
        if (staysClosed[connected.actuator[load]]) {
            diary.fails(now, load, "it does not open");
            return false;
        }
        contacts.open(load, now);
        diary.opens(now, load);
        return true;
    }

    /** Does what an entry of the agenda asks for, unless it is void by now; what is due at one instant bears one time. */
    void act(Agenda.Entry entry, double now) {
        int load = entry.load();
        if (entry.version() != version[load]) {
            return;
        }
        switch (entry.kind()) {
            case OPEN -> {
                willOpen(load, false);
                version[load]++;
                believedOn[load] = false;
                open(load, now);
            }
            case NOMINAL -> {
                willClose(load, false);
                believedOn[load] = true;
                onSince[load] = now;
                if (staysOpen(load) && !contacts.isClosed(load)) {
                    version[load]++;
                    diary.fails(now, load, "it does not close");
                }
            }
            case CLOSE -> {
                if (!staysOpen(load)) {
                    close(entry, now);
                }
            }
            default -> throw new IllegalStateException(entry.toString());
        }
    }

    private void close(Agenda.Entry entry, double now) {
        if (contacts.isClosed(entry.load())) {
            return; // it had not opened when it was told to
        }
        double due = entry.nominalSeconds();
        double tolerance = connected.toleranceSeconds;
        contacts.close(
                entry.load(),
                now,
                Math.max(upToldSeconds[connected.clock[entry.load()]], due - tolerance),
                due + tolerance);
        diary.closes(now, entry.load());
    }

    boolean isQuiet() {
        return toClose == 0 && toOpen == 0;
    }

    /** Whether any switched load is believed to be on. */
    boolean believesAnyOn() {
        for (boolean each : believedOn) {
            if (each) {
                return true;
            }
        }
        return false;
    }
}
