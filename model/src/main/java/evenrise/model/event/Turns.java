package evenrise.model.event;

import evenrise.model.project.Overlap;
import java.util.function.IntPredicate;

/** Which system's turn it is, where each has a command of its own: one at a time, and after what it needs. */
final class Turns {
    private final ConnectedLoads connected;
    private final Sequencer sequencer;
    private final Wishes wishes;
    private final IntPredicate canAct;
    private final IntPredicate canRise;

    Turns(ConnectedLoads connected, Sequencer sequencer, Wishes wishes, IntPredicate canAct, IntPredicate canRise) {
        this.connected = connected;
        this.sequencer = sequencer;
        this.wishes = wishes;
        this.canAct = canAct;
        this.canRise = canRise;
    }

    /** Whether a system may begin to come up: what it needs is through, and no other comes up where one at a time does. */
    boolean mayComeUp(int clock) {
        if (!connected.hasClocks) {
            return true;
        }
        boolean oneAtATime = connected.layout.project().overlap() == Overlap.ONE_AT_A_TIME;
        for (int other = 0; oneAtATime && other < connected.clocks; other++) {
            if (other != clock && sequencer.isComingUp(other)) {
                return false;
            }
        }
        for (int needed : connected.needsClocks[clock]) {
            if (!wishes.commandedOn[needed] || sequencer.isComingUp(needed) || isAwaited(needed)) {
                return false;
            }
        }
        return true;
    }

    /** Whether something of it is wanted, could come on and has not begun to. */
    private boolean isAwaited(int clock) {
        for (int n = 0; n < connected.count(); n++) {
            if (connected.clock[n] == clock && wishes.rise[n] && !sequencer.believedOn[n] && canRise.test(n)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a system may begin to go down: nothing of those that need it is on that could be told to go off. */
    boolean mayGoDown(int clock) {
        if (!connected.hasClocks || wishes.commandedOn[clock]) {
            return true;
        }
        for (int n = 0; n < connected.count(); n++) {
            if (sequencer.believedOn[n]
                    && canAct.test(n)
                    && connected.clock[n] != clock
                    && needs(connected.clock[n], clock)) {
                return false;
            }
        }
        return true;
    }

    private boolean needs(int clock, int other) {
        for (int each : connected.needsClocks[clock]) {
            if (each == other) {
                return true;
            }
        }
        return false;
    }

    /**
     * When a system may begin at the earliest: those that it waits for have been through for a while, and all processing that
     * is on of those that it needs has settled.
     */
    double earliestSeconds(int clock, double[] onSince) {
        boolean oneAtATime = connected.layout.project().overlap() == Overlap.ONE_AT_A_TIME;
        double earliest = Double.NEGATIVE_INFINITY;
        for (int n = 0; connected.hasClocks && n < connected.count(); n++) {
            boolean isNeeded = needs(clock, connected.clock[n]);
            if (!sequencer.believedOn[n] || connected.clock[n] == clock || !isNeeded && !oneAtATime) {
                continue;
            }
            double settle = isNeeded && connected.isProcessing[n]
                    ? connected.loads.get(n).load().settleSeconds()
                    : 0;
            earliest = Math.max(earliest, onSince[n] + Math.max(connected.behaviour.betweenSystemsSeconds(), settle));
        }
        return earliest;
    }
}
