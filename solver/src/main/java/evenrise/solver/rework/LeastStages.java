package evenrise.solver.rework;

import evenrise.solver.bounds.DualFeasible;
import java.util.BitSet;

/**
 * How many stages of a length there are at least: what a change takes by itself it takes in whichever stage, and every
 * stage isolates, and takes systems off, as much as the least of its changes does. What is left of the length is a bin, and
 * changes are packed into bins. Switching and parking come on top, and are left out.
 */
final class LeastStages {
    private final Passage passage;
    /** By change, and nothing of settings and times. */
    private final double[] workMinutes;
    /** What a stage takes besides that makes the change. */
    private final double[] besideMinutes;

    LeastStages(Passage passage) {
        WorkMinutes minutes = WorkMinutes.of(passage.project);
        SurelyOff surely = new SurelyOff(passage);
        this.passage = passage;
        this.workMinutes = new double[passage.size()];
        this.besideMinutes = new double[passage.size()];
        for (int change = 0; change < passage.size(); change++) {
            BitSet one = new BitSet();
            one.set(change);
            workMinutes[change] = passage.isLoad(change)
                    ? minutes(minutes, passage, passage.load(change))
                    : passage.isRemoval(change) ? minutes(minutes, passage.removal(change)) : 0;
            besideMinutes[change] = passage.isolation(one).size() * minutes.of(MoveKind.ISOLATION)
                    + surely.with(change).commands().size() * minutes.of(MoveKind.SHUTDOWN);
        }
    }

    /** 0 where a change alone is longer, so that no order keeps to it. */
    int of(double longestMinutes) {
        return of(passage.all(), longestMinutes);
    }

    /** The same of these changes alone: how many stages there are at least that make some of them. */
    int of(BitSet changes, double longestMinutes) {
        double[] sizes = changes.stream()
                .mapToDouble(change -> workMinutes[change])
                .filter(minutes -> minutes > 0)
                .toArray();
        double room = longestMinutes
                - changes.stream()
                        .filter(change -> workMinutes[change] > 0)
                        .mapToDouble(change -> besideMinutes[change])
                        .min()
                        .orElse(0);
        return DualFeasible.leastBins(room, sizes);
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
