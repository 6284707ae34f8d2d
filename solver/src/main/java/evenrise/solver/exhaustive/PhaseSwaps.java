package evenrise.solver.exhaustive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Exchanges of two phases that leave every load the phases it may have. As long as what is placed does not notice one,
 * of two ways to go on that it makes equal one is enough.
 */
final class PhaseSwaps {
    /** Two phases, as bits. */
    private final List<Integer> pairs = new ArrayList<>();

    PhaseSwaps(SmallProject project) {
        for (int one = 0; one < project.phases; one++) {
            for (int other = one + 1; other < project.phases; other++) {
                int pair = 1 << one | 1 << other;
                boolean isFree = project.loads.stream()
                        .allMatch(load -> Arrays.stream(load.phaseSets())
                                .allMatch(set -> Arrays.binarySearch(load.phaseSets(), swapped(set, pair)) >= 0));
                if (isFree) {
                    pairs.add(pair);
                }
            }
        }
    }

    /** All of them, as bits. */
    int all() {
        return (1 << pairs.size()) - 1;
    }

    /** Whether no exchange that is still free makes a lesser set of it. */
    boolean isLeast(int set, int free) {
        for (int i = 0; i < pairs.size(); i++) {
            if ((free & 1 << i) != 0 && swapped(set, pairs.get(i)) < set) {
                return false;
            }
        }
        return true;
    }

    /** Those that do not notice the set either. */
    int afterPlacing(int set, int free) {
        int left = free;
        for (int i = 0; i < pairs.size(); i++) {
            if (swapped(set, pairs.get(i)) != set) {
                left &= ~(1 << i);
            }
        }
        return left;
    }

    private static int swapped(int set, int pair) {
        int both = set & pair;
        return both == 0 || both == pair ? set : set ^ pair;
    }
}
