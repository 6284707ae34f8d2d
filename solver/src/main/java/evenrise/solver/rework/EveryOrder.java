package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds the cheapest order among all there are: for few changes. */
final class EveryOrder {
    /** More changes than that have too many subsets. */
    static final int MOST_CHANGES = 9;

    private final Passage passage;
    private final int all;
    private final BitSet[] sets;
    private final Map<Integer, Optional<Passage.Way>> ways = new HashMap<>();

    EveryOrder(Passage passage) {
        this.passage = passage;
        this.all = (1 << passage.size()) - 1;
        this.sets = new BitSet[all + 1];
        for (int set = 0; set <= all; set++) {
            sets[set] = BitSet.valueOf(new long[] {set});
        }
    }

    /**
     * The stages, each as the changes it makes.
     *
     * @param atLeast loads that may be worked on at once, whether or not fewer would do
     * @return empty where every order makes something worse than at the start
     */
    Optional<List<BitSet>> cheapest(int atLeast) {
        Optional<Reached> free = cheapestWithin(Integer.MAX_VALUE);
        if (free.isEmpty()) {
            return Optional.empty();
        }
        OrderCost least = free.get().cost;
        for (int most = Math.max(0, atLeast); ; most++) {
            Optional<Reached> found = cheapestWithin(most);
            if (found.isPresent() && found.get().cost.isAsMuchOff(least)) {
                return Optional.of(found.get().stages());
            }
        }
    }

    private record Reached(OrderCost cost, Reached before, BitSet stage) {
        List<BitSet> stages() {
            LinkedList<BitSet> stages = new LinkedList<>();
            for (Reached at = this; at.before != null; at = at.before) {
                stages.addFirst(at.stage);
            }
            return new ArrayList<>(stages);
        }
    }

    private Optional<Reached> cheapestWithin(int most) {
        Reached[] best = new Reached[all + 1];
        best[0] = new Reached(OrderCost.NOTHING, null, null);
        for (int done = 0; done < all; done++) {
            if (best[done] == null) {
                continue;
            }
            int left = all & ~done;
            for (int next = left; next > 0; next = (next - 1) & left) {
                if (passage.loads(sets[next]).size() > most) {
                    continue;
                }
                Optional<Passage.Way> way = way(done, next);
                if (way.isPresent()) {
                    OrderCost cost = best[done].cost.plus(unbounded(way.get().cost()));
                    int reached = done | next;
                    if (best[reached] == null || cost.compareTo(best[reached].cost) < 0) {
                        best[reached] = new Reached(cost, best[done], sets[next]);
                    }
                }
            }
        }
        return Optional.ofNullable(best[all]);
    }

    /** How many are worked on at once is a bound here and no cost, so that costs add up. */
    private static OrderCost unbounded(OrderCost cost) {
        return new OrderCost(cost.systemOffs(), cost.isolations(), 0, cost.outages(), cost.stages());
    }

    private Optional<Passage.Way> way(int done, int next) {
        return ways.computeIfAbsent(done * (all + 1) + next, key -> passage.way(sets[done], sets[next]));
    }
}
