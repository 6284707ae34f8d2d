package evenrise.model.event;

import evenrise.model.project.Restart;
import java.util.function.IntPredicate;

/**
 * Runs sequences: tells breakers to close and to open at the times of the plan, counted from the begin of a run. A run up
 * goes through all of the sequence from its start; what is on already stays on. A run down mirrors it: of what is to go
 * off, what comes on last goes first. The control believes what it told; a breaker that fails does not report back.
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
    private double upBeganSeconds = Double.NEGATIVE_INFINITY;
    private double upToldSeconds;
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

    /** Whether the load's breaker does not close when it is told. */
    boolean staysOpen(int load) {
        return staysOpen[load];
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
        if (!isToClose[load] && !isToOpen[load]) {
            believedOn[load] = contacts.isClosed(load);
        }
    }

    /**
     * Follows new wishes: calls off what is no longer wanted, and begins a run where something new is.
     *
     * @param canAct whether the load's board can tell its breaker anything
     * @param canRise whether its board comes to its turn in a run up
     * @param earliestSeconds when a run up may begin
     */
    void follow(Wishes wishes, IntPredicate canAct, IntPredicate canRise, double now, double earliestSeconds) {
        boolean newDown = false;
        boolean newUp = false;
        for (int n = 0; n < connected.count(); n++) {
            if (isToOpen[n] && wishes.keep[n]) {
                callOffOpening(n);
            }
            if (isToClose[n] && !wishes.rise[n]) {
                callOffClosing(n);
            }
            newDown |= believedOn[n] && !wishes.keep[n] && !isToOpen[n] && canAct.test(n);
            newUp |= !believedOn[n] && wishes.rise[n] && !isToClose[n] && canRise.test(n);
        }
        if (newDown) {
            runDown(wishes, canAct, now);
        }
        if (newUp) {
            runUp(wishes, canRise, Math.max(now, earliestSeconds));
        }
    }

    private void runDown(Wishes wishes, IntPredicate canAct, double now) {
        double last = Double.NEGATIVE_INFINITY;
        IntPredicate goes = n -> believedOn[n] && !wishes.keep[n] && canAct.test(n);
        for (int n = 0; n < connected.count(); n++) {
            if (goes.test(n)) {
                last = Math.max(last, connected.on[n]);
            }
        }
        for (int n = 0; n < connected.count(); n++) {
            if (goes.test(n)) {
                callOffOpening(n);
                isToOpen[n] = true;
                toOpen++;
                agenda.add(now + last - connected.on[n], Agenda.Kind.OPEN, n, ++version[n], 0);
            }
        }
        diary.note(
                now,
                StepKind.GOES_DOWN,
                Words.counted(toOpen, "load") + " to go off in reverse, the last after "
                        + Words.seconds(last - earliestOn(isToOpen)));
    }

    private void runUp(Wishes wishes, IntPredicate canRise, double told) {
        IntPredicate comes = n -> !believedOn[n] && wishes.rise[n] && canRise.test(n);
        upBeganSeconds = beginSeconds(comes, told);
        upToldSeconds = told;
        for (int n = 0; n < connected.count(); n++) {
            if (comes.test(n)) {
                callOffClosing(n);
                isToClose[n] = true;
                toClose++;
                double nominal = upBeganSeconds + connected.on[n];
                double due = nominal + lateSeconds[n];
                double real = Math.max(told, due + timing.offsetSeconds(connected.id(n), closings[n]));
                closings[n]++;
                version[n]++;
                agenda.add(nominal, Agenda.Kind.NOMINAL, n, version[n], nominal);
                agenda.add(real, Agenda.Kind.CLOSE, n, version[n], due);
            }
        }
        double passed = told - upBeganSeconds;
        diary.note(
                told,
                StepKind.BEGINS,
                Words.counted(toClose, "load") + " to come on, the last after "
                        + Words.seconds(latestOn(isToClose) - passed)
                        + (passed > 0 ? "; " + Words.seconds(passed) + " of the sequence are passed over" : ""));
    }

    /**
     * When the sequence counts from. Where it begins at the first missing load, it never counts from before the run before:
     * so whatever is on has been on for as long as in the plan, and order and settling hold.
     */
    private double beginSeconds(IntPredicate comes, double told) {
        if (connected.behaviour.restart() == Restart.WHOLE) {
            return told;
        }
        double first = Double.POSITIVE_INFINITY;
        for (int n = 0; n < connected.count(); n++) {
            first = comes.test(n) ? Math.min(first, connected.on[n]) : first;
        }
        return Math.max(told - first, upBeganSeconds);
    }

    private double latestOn(boolean[] in) {
        double latest = 0;
        for (int n = 0; n < in.length; n++) {
            latest = in[n] ? Math.max(latest, connected.on[n]) : latest;
        }
        return latest;
    }

    private double earliestOn(boolean[] in) {
        double earliest = Double.POSITIVE_INFINITY;
        for (int n = 0; n < in.length; n++) {
            earliest = in[n] ? Math.min(earliest, connected.on[n]) : earliest;
        }
        return earliest;
    }

    private void callOffOpening(int load) {
        if (isToOpen[load]) {
            isToOpen[load] = false;
            toOpen--;
            version[load]++;
        }
    }

    private void callOffClosing(int load) {
        if (isToClose[load]) {
            isToClose[load] = false;
            toClose--;
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
                    && upBeganSeconds + connected.boardBegin[connected.board[n]] > now + 1e-9;
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
        if (staysClosed[load]) {
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
                isToOpen[load] = false;
                toOpen--;
                version[load]++;
                believedOn[load] = false;
                open(load, now);
            }
            case NOMINAL -> {
                isToClose[load] = false;
                toClose--;
                believedOn[load] = true;
                if (staysOpen[load] && !contacts.isClosed(load)) {
                    version[load]++;
                    diary.fails(now, load, "it does not close");
                }
            }
            case CLOSE -> {
                if (!staysOpen[load]) {
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
        contacts.close(entry.load(), now, Math.max(upToldSeconds, due - tolerance), due + tolerance);
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
