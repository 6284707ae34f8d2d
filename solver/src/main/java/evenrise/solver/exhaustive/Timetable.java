package evenrise.solver.exhaustive;

import evenrise.model.plan.BoardSetting;
import java.util.List;

/**
 * Settings of all boards, and with them when each output of the boards in use comes on.
 *
 * @param settings of each board, in the project's order
 * @param instants outputs in the order of their times, up to the latest end
 * @param ends that a plan can have, the earliest first
 */
record Timetable(List<BoardSetting> settings, List<Instant> instants, List<End> ends) {
    /**
     * An end.
     *
     * @param instants how many outputs come on by then
     * @param amps what a plan costs that ends then and uses these boards, for its duration and boards, in ampere-equivalents
     */
    record End(int instants, double amps) {}

    /**
     * An output of a board.
     *
     * @param board by its index
     * @param output from 1
     * @param isLast whether it has to be in use, and is the last of its board that is, since another board begins with it
     */
    record Instant(long micros, int board, int output, boolean isLast) implements Comparable<Instant> {
        /** Stands for whichever output of a board it is. */
        static final int ANY_OUTPUT = 0;

        @Override
        public int compareTo(Instant other) {
            int byTime = Long.compare(micros, other.micros);
            return byTime != 0 ? byTime : Integer.compare(board, other.board);
        }
    }

    Timetable {
        settings = List.copyOf(settings);
        instants = List.copyOf(instants);
        ends = List.copyOf(ends);
    }

    /** What duration and boards cost at least. */
    double leastAmps() {
        return ends.get(0).amps();
    }

    /** When the outputs of a board come on. */
    List<Long> micros(int board) {
        return instants.stream()
                .filter(instant -> instant.board() == board)
                .map(Instant::micros)
                .toList();
    }

    /** What a plan costs at least whose last output in use is not before the given number of them. */
    double amps(int outputs) {
        return ends.stream()
                .filter(end -> end.instants() >= outputs)
                .mapToDouble(End::amps)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** The latest end that costs less than {@code mostAmps}; the earliest where none does. */
    End latest(double mostAmps) {
        End latest = ends.get(0);
        for (End end : ends) {
            latest = end.amps() < mostAmps ? end : latest;
        }
        return latest;
    }
}
