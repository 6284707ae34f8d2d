package evenrise.model.event;

import evenrise.model.project.DeadBoard;
import evenrise.model.project.SequenceInEmergency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the control wants: which loads may stay on, and which may come on. It follows from what was commanded, the contact
 * contacts and the supply; times do not enter.
 */
final class Wishes {
    private final ConnectedLoads connected;
    private final SupplyWatch supply;
    /** By command: one, or one for each system. */
    final boolean[] commandedOn;
    /** Emergency contacts that are closed, by system. */
    final boolean[] emergency;

    final boolean[] groupOff;
    /** Loads that stay off after an emergency until the next command. */
    final boolean[] latched;

    final boolean[] boardDead;

    /** What the control wants on. */
    boolean[] keep;
    /** What of it may come on now. */
    boolean[] rise;

    Wishes(ConnectedLoads connected, SupplyWatch supply) {
        this.connected = connected;
        this.supply = supply;
        commandedOn = new boolean[connected.clocks];
        emergency = new boolean[Math.max(1, connected.systems.size())];
        groupOff = new boolean[connected.groups.size()];
        latched = new boolean[connected.count()];
        boardDead = new boolean[connected.boards.size()];
        keep = new boolean[connected.count()];
        rise = new boolean[connected.count()];
    }

    /** Works out {@link #keep} and {@link #rise}. */
    void settle(boolean[] believedOn) {
        boolean[] commanded = commanded(groupOff);
        keep = new boolean[connected.count()];
        for (int n = 0; n < connected.count(); n++) {
            keep[n] = commanded[n]
                    && !supply.isTripped(connected.watch(n))
                    && !(emergency[connected.system[n]] && connected.drops[n])
                    && !latched[n];
        }
        rise = keep.clone();
        boolean stops = connected.behaviour.deadBoard() == DeadBoard.STOP;
        boolean isToWait = connected.behaviour.sequenceInEmergency() == SequenceInEmergency.STOP;
        for (int n = 0; n < connected.count(); n++) {
            boolean waits = isToWait && emergency[connected.system[n]];
            rise[n] &= !waits && !(stops && !believedOn[n] && chainIsDead(n));
        }
        close(rise);
    }

    /** What commands alone leave on, needs included, if these groups were off. */
    boolean[] commanded(boolean[] off) {
        return commanded(off, commandedOn);
    }

    /** The same if these commands stood. */
    boolean[] commanded(boolean[] off, boolean[] on) {
        boolean[] wanted = new boolean[connected.count()];
        for (int n = 0; n < connected.count(); n++) {
            wanted[n] = connected.switched[n]
                    && on[connected.clock[n]]
                    && (connected.group[n] == ConnectedLoads.NONE || !off[connected.group[n]]);
        }
        close(wanted);
        return wanted;
    }

    /** Loads outside {@code group} that were in before and are not after. */
    List<Integer> lost(boolean[] before, boolean[] after, int group) {
        List<Integer> lost = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (before[n] && !after[n] && connected.group[n] != group) {
                lost.add(n);
            }
        }
        return lost;
    }

    /** Takes out whatever needs something that is not in: processing, or what it comes after. */
    private void close(boolean[] in) {
        boolean changes = true;
        while (changes) {
            changes = false;
            Map<int[], Boolean> has = new IdentityHashMap<>();
            for (int n = 0; n < connected.count(); n++) {
                if (in[n]
                        && (!has.computeIfAbsent(connected.needs[n], needed -> has(in, needed))
                                || !has(in, connected.after[n]))) {
                    in[n] = false;
                    changes = true;
                }
                if (in[n] != in[connected.actuator[n]]) { // behind one contactor: all or none
                    in[n] = false;
                    in[connected.actuator[n]] = false;
                    changes = true;
                }
            }
        }
    }

    private static boolean has(boolean[] in, int[] needed) {
        return Arrays.stream(needed).allMatch(each -> in[each]);
    }

    boolean anyCommandedOn() {
        return any(commandedOn);
    }

    boolean anyEmergency() {
        return any(emergency);
    }

    private static boolean any(boolean[] all) {
        for (boolean each : all) {
            if (each) {
                return true;
            }
        }
        return false;
    }

    /** Whether the load's board, or one that starts it, is dead, or has tripped and waits. */
    boolean chainIsDead(int load) {
        int steps = 0;
        for (int b = connected.board[load];
                b != ConnectedLoads.NONE && steps <= connected.boards.size();
                b = connected.boardAfter[b]) {
            if (boardDead[b] || supply.isTripped(connected.watchOf[b])) {
                return true;
            }
            steps++;
        }
        return false;
    }

    /** Whether the board begins only after {@code head} has run. */
    boolean follows(int board, int head) {
        int steps = 0;
        for (int b = board; b != ConnectedLoads.NONE && steps <= connected.boards.size(); b = connected.boardAfter[b]) {
            if (b == head) {
                return true;
            }
            steps++;
        }
        return false;
    }
}
