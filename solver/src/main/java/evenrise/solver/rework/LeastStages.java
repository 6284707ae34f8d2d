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
        WorkMinutes minutes = WorkMinutes.of(passage.project);
        double work = 0;
        double leastIsolation = Double.POSITIVE_INFINITY;
        for (LoadChange change : passage.changes.loads()) {
            work += minutes.of(MoveKind.TEST)
                    + change.breakerKind().map(minutes::of).orElse(0.0)
                    + change.leadKind(passage.index).map(minutes::of).orElse(0.0);
        }
        for (Removal removal : passage.changes.removals()) {
            work += minutes.of(MoveKind.REMOVAL)
                    + removal.from()
                            .board()
                            .map(any -> minutes.of(MoveKind.LEAD))
                            .orElse(0.0);
        }
        for (int change = 0; change < passage.size(); change++) {
            if (passage.isLoad(change) || passage.isRemoval(change)) {
                BitSet one = new BitSet();
                one.set(change);
                leastIsolation =
                        Math.min(leastIsolation, passage.isolation(one).size() * minutes.of(MoveKind.ISOLATION));
            }
        }
        double room = longestMinutes - (Double.isFinite(leastIsolation) ? leastIsolation : 0);
        return work > 0 && room > 0 ? (int) Math.ceil(work / room - 1e-9) : 0;
    }
}
