package evenrise.solver.rework;

import java.util.BitSet;

/**
 * How many stages of a length there are at least: what a change takes by itself it takes in whichever stage, and every
 * stage that works on a load isolates as much as the least of the changes does. Switching, parking and shutdowns come on
 * top, and are left out.
 */
final class LeastStages {
    private LeastStages() {}

    /** 0 where a change alone is longer, so that no order keeps to it. */
    static int of(Passage passage, double longestMinutes) {
        return of(passage, passage.all(), longestMinutes);
    }

    /** The same of these changes alone: how many stages there are at least that make some of them. */
    static int of(Passage passage, BitSet changes, double longestMinutes) {
        WorkMinutes minutes = WorkMinutes.of(passage.project);
        double work = 0;
        double leastIsolation = Double.POSITIVE_INFINITY;
        for (int change = changes.nextSetBit(0); change >= 0; change = changes.nextSetBit(change + 1)) {
            if (passage.isLoad(change)) {
                work += minutes(minutes, passage, passage.load(change));
            } else if (passage.isRemoval(change)) {
                work += minutes(minutes, passage.removal(change));
            } else {
                continue;
            }
            BitSet one = new BitSet();
            one.set(change);
            leastIsolation = Math.min(leastIsolation, passage.isolation(one).size() * minutes.of(MoveKind.ISOLATION));
        }
        double room = longestMinutes - (Double.isFinite(leastIsolation) ? leastIsolation : 0);
        return work > 0 && room > 0 ? (int) Math.ceil(work / room - 1e-9) : 0;
    }

    private static double minutes(WorkMinutes minutes, Passage passage, LoadChange change) {
        return minutes.of(MoveKind.TEST)
                + change.breakerKind().map(minutes::of).orElse(0.0)
                + change.leadKind(passage.index).map(minutes::of).orElse(0.0);
    }

    private static double minutes(WorkMinutes minutes, Removal removal) {
        return minutes.of(MoveKind.REMOVAL)
                + removal.from().board().map(any -> minutes.of(MoveKind.LEAD)).orElse(0.0);
    }
}
