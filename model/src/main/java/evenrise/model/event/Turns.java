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

    /** When all processing that is on of the systems that it needs has settled. */
    double settledSeconds(int clock, double[] onSince) {
        double settled = Double.NEGATIVE_INFINITY;
        for (int n = 0; n < connected.count(); n++) {
            if (connected.isProcessing[n]
                    && sequencer.believedOn[n]
                    && connected.clock[n] != clock
                    && needs(clock, connected.clock[n])) {
                settled = Math.max(
                        settled, onSince[n] + connected.loads.get(n).load().settleSeconds());
            }
        }
        return settled;
    }
}
