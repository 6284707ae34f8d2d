package evenrise.solver.exact;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Ways to put loads on phases, by what comes first on each phase of those that climb: it ranks from {@code from} to {@code
 * to}, by falling excess. Phases are alike, so they stand in the order of these ranks.
 */
record LadderBox(List<Integer> first, List<Integer> last) {
    /** All ways. */
    static LadderBox whole(int phases, int ranks) {
        Integer[] none = new Integer[phases];
        Integer[] all = new Integer[phases];
        Arrays.fill(none, 0);
        Arrays.fill(all, ranks);
        return new LadderBox(List.of(none), List.of(all));
    }

    int from(int phase) {
        return first.get(phase);
    }

    int to(int phase) {
        return last.get(phase);
    }

    /** The phase of which least is known by these figures, which fall by rank; -1 where all is known. */
    int widest(double[] byRank) {
        int widest = -1;
        double most = -1;
        for (int phase = 0; phase < first.size(); phase++) {
            double width = byRank[from(phase)] - byRank[to(phase)];
            if (from(phase) < to(phase) && width > most) {
                most = width;
                widest = phase;
            }
        }
        return widest;
    }

    /** The ways of this box in which the rank on a phase is within these bounds; empty where there are none. */
    Optional<LadderBox> with(int phase, int from, int to) {
        Integer[] first = this.first.toArray(Integer[]::new);
        Integer[] last = this.last.toArray(Integer[]::new);
        first[phase] = Math.max(from, first[phase]);
        last[phase] = Math.min(to, last[phase]);
        for (int i = 1; i < first.length; i++) {
            first[i] = Math.max(first[i], first[i - 1]);
        }
        for (int i = first.length - 2; i >= 0; i--) {
            last[i] = Math.min(last[i], last[i + 1]);
        }
        for (int i = 0; i < first.length; i++) {
            if (first[i] > last[i]) {
                return Optional.empty();
            }
        }
        return Optional.of(new LadderBox(List.of(first), List.of(last)));
    }
}
